/** Letters and digits that are not mistaken for one another on paper (D. Crockford's base 32). */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const GROUP = 4;

/** Characters: 60 bits for a code that is used once, 120 for one that lies in a drawer for years. */
export const CODE_LENGTH = { once: 12, recovery: 24 } as const;

/** A code to be written down, in groups of four, from random bytes (one for each character; their lowest five bits are used). */
export function writeCode(random: Uint8Array): string {
  const characters = Array.from(random, (byte) => ALPHABET[byte & 31]!).join('');
  return characters.match(new RegExp(`.{1,${GROUP}}`, 'g'))?.join('-') ?? '';
}

/** The code as it was given out, from what was typed: without regard to case, hyphens and blanks, and with the letters that look like digits read as those. */
export const readCode = (typed: string): string =>
  typed.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
