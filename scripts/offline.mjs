// node offline.mjs SITE: writes SITE/sw.js with the Workbox runtime inside it, so that nothing loads from elsewhere.
// Everything is relative to the worker's own place, so the site works in any folder of any host.
import { generateSW } from 'workbox-build';

const site = process.argv[2];
const { warnings } = await generateSW({
  globDirectory: site,
  globPatterns: ['**/*.{html,css,mjs,svg,png,webmanifest}', 'search.json', 'engine/small-*/*', 'engine/calc-*.bin'],
  globIgnores: ['engine/full-*/**', 'sw.js', '**/*.{br,gz}'],
  swDest: site + '/sw.js',
  inlineWorkboxRuntime: true,
  sourcemap: false,
  mode: 'production',
  // A new edition waits until the reader takes it, so that a page and its calculators are always of one edition.
  skipWaiting: false,
  clientsClaim: true,
  cleanupOutdatedCaches: true,
  directoryIndex: 'index.html',
  maximumFileSizeToCacheInBytes: 5_000_000,
  runtimeCaching: [
    {
      // The full engine is kept once it was used; its folder is named by what is in it.
      urlPattern: /\/engine\/(full-[0-9a-f]+\/|calc-[0-9a-f]+\.whl)/,
      handler: 'CacheFirst',
      options: { cacheName: 'full-engine' }, // offline.mjs of the page takes out what is of older editions
    },
  ],
});
if (warnings.length) {
  console.error(warnings.join('\n'));
  process.exit(1);
}
