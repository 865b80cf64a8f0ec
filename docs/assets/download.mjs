// @ts-check
// The one way to hand a file out to the device.

const A_WHILE = 60_000; // milliseconds that a slow device may take to begin to read the file

/** @param {string} name @param {string} type @param {string} text */
export function download(name, type, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), A_WHILE);
}
