/** Text as it is searched: lower case, without accents. SQLite's own LIKE knows only the letters A to Z. */
export const fold = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
