const ASCII = /^[\x00-\x7f]*$/;

/** Text as it is searched: lower case, without accents. SQLite's own LIKE knows only the letters A to Z. */
export const fold = (text: string): string =>
  // Most text is ASCII, and a search folds every row of a table.
  (ASCII.test(text) ? text : text.normalize('NFD').replace(/\p{M}/gu, '')).toLowerCase();
