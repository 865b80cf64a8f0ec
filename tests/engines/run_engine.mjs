// node run_engine.mjs small|full SITE ENGINES_JSON [--text | --time] < questions > digests
// Drives the built site's own worker outside a browser: every question (one JSON [calculator, inputs text] a line) goes
// through it as a message, and one line comes out for each: the SHA-256 of the answer, or with --text the answer itself, or with --time the milliseconds it took.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

const [engine, site, enginesJson, form] = process.argv.slice(2);
const root = pathToFileURL(site.endsWith('/') ? site : site + '/');
const engines = Object.fromEntries(
  Object.entries(JSON.parse(enginesJson)).map(([name, path]) => [name, typeof path === 'string' ? new URL(path, root).href : path]),
);
// Pyodide wants a folder of this machine here, not an address.
if (engine === 'full') engines.full_folder = fileURLToPath(engines.full_folder);

globalThis.fetch = async (url) => new Response(fs.readFileSync(String(url).startsWith('file:') ? fileURLToPath(url) : url));
let settle;
globalThis.self = { postMessage: (data) => 'phase' in data || settle(data) };
const assets = fs.readdirSync(site).find((name) => name.startsWith('assets-'));
await import(new URL(`${assets}/worker.mjs`, root).href);

const out = [];
for (const line of fs.readFileSync(0, 'utf8').split('\n')) {
  if (!line) continue;
  const [calculator, inputs] = JSON.parse(line);
  const begun = performance.now();
  const answered = await new Promise((resolve) => {
    settle = resolve;
    globalThis.self.onmessage({ data: { id: 1, engines, engine, calculator, inputs } });
  });
  if (answered.error) {
    process.stderr.write(`${inputs}\n${answered.error}\n`);
    process.exit(1);
  }
  if (form === '--time') {
    out.push((performance.now() - begun).toFixed(1));
    continue;
  }
  out.push(form === '--text' ? answered.text : createHash('sha256').update(answered.text).digest('hex'));
}
process.stdout.write(out.join('\n') + '\n', () => process.exit(0));
