import { FILE_LIMITS } from './reader-defaults.ts';

/** The header entries that are kept with a block: non-empty, shortened, not too many. */
export function keptHeader(entries: readonly (readonly [string, string])[]): (readonly [string, string])[] {
  const cut = (text: string): string => (text.length > FILE_LIMITS.headerChars ? `${text.slice(0, FILE_LIMITS.headerChars)}…` : text);
  return entries.filter(([label, value]) => label !== '' && value !== '').slice(0, FILE_LIMITS.headerEntries).map(([label, value]) => [cut(label), cut(value)] as const);
}
