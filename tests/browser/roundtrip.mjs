// Made-up jobs out to a file and back, and each file against its schema. Reads {"seed", "count", "schema", "module", "ajv"}.
import { readFileSync } from 'node:fs';

const { seed, count, schema, module, ajv } = JSON.parse(readFileSync(0, 'utf8'));
const { default: Ajv } = await import(ajv);
const fits = new (Ajv.default ?? Ajv)({ allErrors: true }).compile(JSON.parse(readFileSync(schema, 'utf8')));
const { check, read, write } = await import(module);

let state = seed;
const below = (most) => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return Math.floor((state / 2 ** 32) * most);
};
const LETTERS = ['a', 'Z', '0', '9', ' ', '\n', '\t', '"', '\\', '/', '<script>alert(1)</script>', '&', '\u0000', '\u2028', 'é', '½', '㍍', '😀', '\u202e', "'", '${x}', '__proto__', '{', '[', ','];
const text = (most) => Array.from({ length: below(most) }, () => LETTERS[below(LETTERS.length)]).join('');
const NAME = 'abcdefghijklmnopqrstuvwxyz';
const word = (joint) => Array.from({ length: 1 + below(3) }, () => Array.from({ length: 2 + below(6) }, () => NAME[below(26)]).join('')).join(joint);
const moment = () => new Date(1.6e12 + below(2 ** 31) * 300).toISOString();
const map = (most, name, value) => Object.fromEntries(Array.from({ length: below(most) }, () => [name(), value()]));
const job = () => ({
  id: Array.from({ length: 1 + below(32) }, () => (NAME + '0123456789')[below(36)]).join(''),
  name: ['Elm', 'Haus <b>&', '…', '"x" \\', 'Ünïcode 😀'][below(5)] + below(1000),
  made: below(5) ? moment() : '',
  changed: below(5) ? moment() : '',
  figures: map(40, () => word('_'), () => text(60)),
  ticks: map(40, () => word('-'), moment),
  timers: map(4, () => word('-'), moment),
  prices: map(12, () => `${word(' ')}, $ ${below(99)}`, () => text(12)),
  notes: text(80),
});

const faults = [];
const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);
for (let at = 0; at < count && faults.length < 5; at += 1) {
  const one = job();
  const file = write(one);
  if (!fits(JSON.parse(file))) faults.push(`schema: ${JSON.stringify(fits.errors[0])} of ${file.slice(0, 200)}`);
  const { job: again, dropped } = read(file, null);
  if (!same(one, again) || dropped.length || write(again) !== file) faults.push(`not the same: ${file.slice(0, 300)} ${write(again).slice(0, 300)}`);
  if (!same(check(JSON.parse(JSON.stringify(one)), null).job, one)) faults.push('check changes a job');
  // What the schema turns away is refused, and the other way round, whichever part is broken.
  const broken = JSON.parse(file);
  const part = ['figures', 'ticks', 'timers', 'prices'][below(4)];
  const harm = below(8);
  if (harm === 0) broken[part][word('_')] = [7, null, {}, ['x'], true][below(5)];
  else if (harm === 1) broken[part] = [null, [], 'x', 7][below(4)];
  else if (harm === 2) broken[part]['constructor'] = moment();
  else if (harm === 3) broken.version = [2, 0, -1, 1.5, '1', null][below(6)];
  else if (harm === 4) broken.format = ['lidbook', '', null, ['lidbook-job']][below(4)];
  else if (harm === 5) broken[['name', 'notes', 'id', 'made', 'changed'][below(5)]] = [7, null, {}, 'x'.repeat(20001), false][below(5)];
  else if (harm === 6) broken[['figures', 'ticks', 'timers'][below(3)]]['<img src=x onerror=alert(1)>'] = moment();
  else delete broken[['version', 'id', 'name', 'made', 'changed', 'figures', 'ticks', 'timers', 'prices', 'notes'][below(10)]];
  let why = '';
  try {
    read(JSON.stringify(broken), null);
  } catch (error) {
    why = error.constructor.name === 'Refusal' ? error.message : `not a refusal but ${error}`;
  }
  if (fits(broken)) faults.push(`the schema lets through: ${JSON.stringify(broken).slice(0, 300)}`);
  if (!/^[A-Z].*\.$/su.test(why)) faults.push(`harm ${harm}: ${why || 'taken'}: ${JSON.stringify(broken).slice(0, 300)}`);
}
console.log(JSON.stringify({ faults }));
