import path from 'node:path';
import { err, ok, type Result } from '../../app/result.ts';
import type { RememberedHead } from '../../db/verify/checkpoints.ts';
import { dataFiles, filesBeside } from '../casebook/data-files.ts';
import { lookAtRemembered } from '../casebook/remembered.ts';
import type { Trouble } from './trouble.ts';

/** What the program noted of the audit ledger when it closed a casebook, and the file that says so. */
export type FoundHead = { readonly file: string; readonly head: RememberedHead };

/**
 * Where the program keeps what it noted of this very file: `state.json` beside a laboratory's own casebook, “NAME state.json” beside one
 * that was named at the start. A copy that lies elsewhere, a backup for instance, is older by nature and is not compared by itself.
 */
export function besideOf(casebook: string): string {
  const files = dataFiles(path.dirname(casebook));
  return files.own === casebook ? files.state : filesBeside(casebook).state;
}

/** The head to compare with: from the file that was stated, else from the one beside the casebook; null where none was noted. */
export function findRememberedHead({ casebook, begun }: { readonly casebook: string; readonly begun: string | null }, stated: string | undefined, workingFolder: string): Result<FoundHead | null, Trouble> {
  const file = stated === undefined ? besideOf(casebook) : path.resolve(workingFolder, stated);
  const head = lookAtRemembered(file)?.head ?? null;
  if (head === null && stated !== undefined) {
    return err({ code: 'nothing-remembered', message: `${stated} does not say how far the audit ledger had come when a casebook was closed.`, next: 'Name the state.json of the data folder in which the program closed the casebook.' });
  }
  if (head === null || head.begun === begun) return ok(head === null ? null : { file, head });
  return stated === undefined ? ok(null) : err({ code: 'other-casebook', message: `${stated} speaks of another casebook, begun ${head.begun}.`, next: 'Name the state.json of the data folder in which the program closed this one.' });
}
