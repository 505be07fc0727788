import type { FileTrial } from '../../app/contract/work.ts';
import type { IncomingFile } from './incoming-file.ts';
import { unitIsOpen } from './trial-words.ts';

/** What became of the files of a sheet: "11 files: 8 read, 3 refused, see above". `left` were not taken at all. Empty where there are none. */
export function tallyFiles(files: readonly Pick<IncomingFile, 'key'>[], trials: ReadonlyMap<string, FileTrial>, left: number): string {
  const all = files.length + left;
  if (all === 0) return '';
  const tried = files.map((file) => trials.get(file.key)).filter((trial) => trial !== undefined);
  const refused = tried.filter((trial) => trial.error !== null).length;
  const open = tried.filter((trial) => trial.error === null && unitIsOpen(trial)).length;
  const read = tried.length - refused - open;
  const waiting = files.length - tried.length;
  const parts = [[waiting, 'being read'], [read, 'read'], [open, open === 1 ? 'asks for its unit' : 'ask for their unit'], [refused, 'refused'], [left, 'not taken']] as const;
  return `${all} ${all === 1 ? 'file' : 'files'}: ${parts.filter(([n]) => n > 0).map(([n, words]) => `${n} ${words}`).join(', ')}${refused + left + open > 0 ? ', see above' : ''}`;
}
