/** Why a file can't be used as a casebook. Nothing was changed in it, whatever the code. */
export type OpenFailure = {
  readonly code: 'missing' | 'exists' | 'damaged' | 'newer' | 'history' | 'in-use' | 'not-a-casebook' | 'cannot-write' | 'migration-failed';
  /** What is the matter, for a person. */
  readonly message: string;
  /** What to do next. */
  readonly next: string;
};

const SENTENCES: Readonly<Record<OpenFailure['code'], (file: string, detail: string) => Omit<OpenFailure, 'code'>>> = {
  missing: (file) => ({
    message: `The casebook ${file} is not there any more.`,
    next: 'If it was moved, put it back; if its drive is not connected, connect it. Otherwise restore a backup. Culet does not start an empty one in its place.',
  }),
  exists: (file) => ({ message: `There is already a file ${file}.`, next: 'Open that casebook, or move the file away first. Culet never writes over a casebook.' }),
  damaged: (file, detail) => ({
    message: `The casebook ${file} is damaged${detail ? ` (${detail})` : ''}. Nothing was changed.`,
    next: 'Restore the last good backup; the damaged file is kept beside it for whoever looks into the cause.',
  }),
  newer: (file, detail) => ({
    message: `The casebook ${file} was written by a newer version of Culet${detail ? ` (${detail})` : ''}. Nothing was changed.`,
    next: 'Install the newer version again, or restore a backup from before the update.',
  }),
  history: (file, detail) => ({
    message: `The casebook ${file} was set up by a version of Culet that does not match this one${detail ? ` (${detail})` : ''}. Nothing was changed.`,
    next: 'Install an unaltered copy of Culet and open the casebook again.',
  }),
  'in-use': (file) => ({
    message: `The casebook ${file} is open in another program. Nothing was changed.`,
    next: 'Close the other Culet window or program that uses it, then try again. One casebook is written by one program at a time.',
  }),
  'not-a-casebook': (file) => ({ message: `The file ${file} is not a casebook of Culet. Nothing was changed.`, next: 'Choose another file; if it stands where your casebook was, restore a backup.' }),
  'cannot-write': (file, detail) => ({
    message: `The casebook ${file} can’t be written${detail ? ` (${detail})` : ''}.`,
    next: 'See whether the disk is full, the drive is write-protected, or the folder belongs to someone else.',
  }),
  'migration-failed': (file, detail) => ({
    message: `The casebook ${file} could not be brought up to this version${detail ? ` (${detail})` : ''}. It is as it was before.`,
    next: 'Go on with the version you had, and send the log to whoever maintains Culet. A backup was made before trying.',
  }),
};

/** The failure with its sentences; `detail` is a short fact in brackets, or empty. */
export function openFailure(code: OpenFailure['code'], file: string, detail = ''): OpenFailure {
  return { code, ...SENTENCES[code](file, detail) };
}
