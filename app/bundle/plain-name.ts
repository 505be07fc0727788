/** Longest name that is kept, characters. */
const LONGEST = 255;

/** What works on a terminal or turns the reading direction: control characters, marks of direction, invisible ones. */
const NOT_SHOWN = /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;

/** The name of a file that somebody brings, as it is kept and shown: no folders, nothing that hides what it says. Never empty. */
export function plainName(name: string): string {
  const plain = name.normalize('NFC').replace(NOT_SHOWN, '\ufffd').split(/[/\\]/).at(-1)!.trim();
  return [...plain].slice(-LONGEST).join('') || 'unnamed';
}
