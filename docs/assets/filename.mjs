// @ts-check
// Names of files that go out of the page: what any device takes. In a firm's edition the firm's name stands first.

const LONGEST = 40; // letters of a name

/** A text as a part of a file's name; nothing where no letter of it can stand in one. @param {string} text */
export const plain = (text) => text.normalize('NFKD').replace(/\p{M}+/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').slice(0, LONGEST).replace(/^-+|-+$/g, '');

/** The firm whose edition this is, '' where it is nobody's. */
export const firmName = () => document.documentElement.dataset.firm ?? '';

/** @param {string} name of a file @param {string} firm */
export const ofFirm = (name, firm) => [plain(firm), name].filter(Boolean).join('-');
