/** FNV-1a over UTF-8, 32 bits. */
const OFFSET = 0x811c9dc5;
const PRIME = 0x01000193;

/** A seed from words: the same words give the same noise and the same picture. */
export function seedOf(...words: readonly string[]): number {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(words.join('\0'))) hash = Math.imul(hash ^ byte, PRIME);
  return hash | 0;
}
