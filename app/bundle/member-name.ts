/** Longest name of a file in a bundle, folders counted in: what unpacks everywhere. */
const MAX_LENGTH = 240;

/** Characters that mean something to a file system or a terminal, or that turn the reading direction. */
const FORBIDDEN = /[\u0000-\u001f\u007f-\u009f<>:"\\|?*\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/;

/** Why a file of this name must not be unpacked, in half a sentence; null where it may. */
export function unsafeName(name: string): string | null {
  if (name === '') return 'it is empty';
  if (name.length > MAX_LENGTH) return 'it is longer than 240 characters';
  if (name.startsWith('/')) return 'it begins at the root of the disk';
  if (/^[A-Za-z]:/.test(name)) return 'it names a drive';
  if (name.includes('\\')) return 'it has a backslash';
  if (name.split('/').some((part) => part === '..' || part === '.')) return 'it leads out of its folder';
  if (name.split('/').some((part) => part === '')) return 'it has an empty part';
  if (FORBIDDEN.test(name)) return 'it has characters that no file should have';
  return null;
}
