import type { FileTrial } from '../../app/contract/work.ts';
import type { StatableXUnit } from '../../app/spectra/spectrum.ts';
import type { IncomingFile } from './incoming-file.ts';
import { unitIsOpen } from './trial-words.ts';

/**
 * States the unit of one file, and of those that were dropped with it, do not say theirs and got no word of their own:
 * files of one drop come from one instrument. Saying it again for the first changes them too; a file's own word stays.
 */
export function stateUnit(files: readonly IncomingFile[], key: string, xUnit: StatableXUnit, trials: ReadonlyMap<string, FileTrial>): IncomingFile[] {
  const drop = files.find((file) => file.key === key)?.drop;
  return files.map((file) => {
    if (file.key === key) return { ...file, xUnit, unitFrom: undefined };
    const follows = file.drop === drop && (file.unitFrom === key || (file.xUnit === undefined && unitIsOpen(trials.get(file.key))));
    return follows ? { ...file, xUnit, unitFrom: key } : file;
  });
}
