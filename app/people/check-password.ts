/**
 * Shortest password. NIST SP 800-63B asks for length rather than kinds of characters, and for 8 at least; from memory.
 * Twelve, because whoever has a copy of the file may guess without being slowed down.
 */
export const MIN_PASSWORD = 12;
export const MAX_PASSWORD = 200;

/** Fewer different characters than this are soon guessed: common practice, no source. */
const MIN_DIFFERENT = 5;

/** The one form in which a password is used: the same key strokes may give differently composed letters on another machine (Unicode NFKC). */
export const normalPassword = (typed: string): string => typed.normalize('NFKC');

/** Why a password can't be chosen, in a sentence, or null. `names`: the person's and the laboratory's, which anyone would try first. */
export function checkPassword(typed: string, names: readonly string[]): string | null {
  const password = normalPassword(typed);
  const letters = [...password];
  if (letters.length < MIN_PASSWORD) return `Choose at least ${MIN_PASSWORD} characters; several words in a row are easy to remember.`;
  if (letters.length > MAX_PASSWORD) return `At most ${MAX_PASSWORD} characters.`;
  if (new Set(letters).size < MIN_DIFFERENT) return 'This repeats a few characters and is soon guessed: choose several words in a row.';
  const plain = password.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  if (names.some((name) => plain === name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ''))) return 'This is a name that anyone would try first: choose several words in a row.';
  return null;
}
