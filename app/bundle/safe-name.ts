/** Longest name kept, so that the path stays usable on every file system. */
const MAX_LENGTH = 80;

/** Names that Windows keeps for devices, whatever their ending. */
const DEVICE_NAME = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|$)/i;

/** Characters that mean something to a file system, a shell or a terminal, or that turn the reading direction. */
const UNSAFE = /[\u0000-\u001f\u007f-\u009f<>:"/\\|?*\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g;

/**
 * A file's name as it may stand in an archive: no path, no control characters, no device name, at most 80 characters
 * with its ending kept. Never empty.
 */
export function safeName(name: string): string {
  const bare = name.normalize('NFC').replace(UNSAFE, '_').replace(/^[.\s]+/, '').replace(/[.\s]+$/, '');
  if (bare === '') return 'unnamed';
  const named = DEVICE_NAME.test(bare) ? `_${bare}` : bare;
  const characters = [...named];
  if (characters.length <= MAX_LENGTH) return named;
  const dot = named.lastIndexOf('.');
  const ending = dot > 0 && named.length - dot <= 12 ? named.slice(dot) : '';
  return characters.slice(0, MAX_LENGTH - [...ending].length).join('') + ending;
}

/** Gives names out once each, ignoring case as some file systems do: a second "a.txt" becomes "a-2.txt". */
export function uniqueNames(): (path: string) => string {
  const given = new Set<string>();
  return (path) => {
    const dot = path.lastIndexOf('.');
    const split = dot > path.lastIndexOf('/') + 1 ? dot : path.length;
    for (let count = 1; ; count += 1) {
      const candidate = count === 1 ? path : `${path.slice(0, split)}-${count}${path.slice(split)}`;
      const key = candidate.toLowerCase();
      if (given.has(key)) continue;
      given.add(key);
      return candidate;
    }
  };
}
