// Asks the page's own modules from outside a page: one request as JSON on the standard input, the answer on the output.
// `assets` is the folder that the modules stand in.
const [assets] = process.argv.slice(2);
const { readShortLink, shortLink } = await import(`${assets}/joblink.mjs`);
const { calendar } = await import(`${assets}/ical.mjs`);

const asked = JSON.parse(await new Response(process.stdin).text());
const write = (job) => {
  try {
    return shortLink(job);
  } catch (error) {
    return error.name;
  }
};
const read = (link) => {
  const found = readShortLink(link);
  return { ...found, values: [...found.values] };
};
const make = ([events, name]) => {
  try {
    return calendar(events, { name, stamp: new Date('2026-11-27T10:20:30.400Z') });
  } catch (error) {
    return error.name;
  }
};
const done = { written: (asked.write ?? []).map(write), read: (asked.read ?? []).map(read), made: (asked.make ?? []).map(make) };
if (asked.write && asked.back) done.read = done.written.map(read);
console.log(JSON.stringify(done));
