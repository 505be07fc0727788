import type { Failure } from '../../app/contract/failure.ts';
import type { OperationName, Output, ParsedInput } from '../../app/contract/index.ts';
import type { Jurisdiction } from '../../app/report/nomenclature.ts';
import { err, type Result } from '../../app/result.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import { createWorkStores, type WorkStores } from '../../db/store/work-stores.ts';
import type { Signer } from '../keys/signer.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { noCasebook, refused } from './failures.ts';
import type { Call, Deps, Service } from './service.ts';

/** What the services of the work on a stone are made from. */
export type WorkDeps = Deps & { readonly casebook: () => Casebook | null; readonly pool: TaskPool; readonly signer: Signer };

/** What one call works with. */
export type Work = {
  readonly casebook: Casebook;
  readonly stores: WorkStores;
  readonly pool: TaskPool;
  /** Signs with the laboratory's key. */
  readonly signer: Signer;
  readonly call: Call;
  /** The instant of the call, UTC ISO 8601: one for everything it writes. */
  readonly at: string;
};

/** What a changing call works with beside: who changes, by which operation. */
export type ChangingWork = Work & { readonly change: Change & { readonly personId: string } };

/** Where the readers of the house's reports live: it decides which words are pointed out. */
export const readersOf = (casebook: Casebook): Jurisdiction => theLaboratory(casebook.handle.read).settings.readers;

const storesOf = new WeakMap<Casebook, WorkStores>();

function storesFor(casebook: Casebook, newId: () => string): WorkStores {
  const known = storesOf.get(casebook);
  if (known !== undefined) return known;
  const made = createWorkStores(casebook.handle, newId);
  storesOf.set(casebook, made);
  return made;
}

/** A service that reads the open casebook. */
export function reading<K extends OperationName>(deps: WorkDeps, _operation: K, work: (input: ParsedInput<K>, work: Work) => Promise<Result<Output<K>, Failure>>): Service<K> {
  return async (input, call) => {
    const casebook = deps.casebook();
    if (casebook === null) return noCasebook();
    return work(input, { casebook, stores: storesFor(casebook, deps.newId), pool: deps.pool, signer: deps.signer, call, at: deps.now().toISOString() });
  };
}

/** A service that changes the open casebook, in the name of the person at the window. */
export function changing<K extends OperationName>(deps: WorkDeps, operation: K, work: (input: ParsedInput<K>, work: ChangingWork) => Promise<Result<Output<K>, Failure>>): Service<K> {
  return async (input, call) => {
    const casebook = deps.casebook();
    if (casebook === null) return noCasebook();
    const { personId } = call.session;
    const person = personId === null ? null : await casebook.people.get(personId);
    if (personId === null || person === null || !person.active) return refused('Nobody has signed in at this window.', 'Sign in, then try again: every change is written down with a name.');
    const at = deps.now().toISOString();
    return work(input, { casebook, stores: storesFor(casebook, deps.newId), pool: deps.pool, signer: deps.signer, call, at, change: { at, personId, operation } });
  };
}

/** A refusal of the core as it crosses the door, the wrong field with its own sentence. */
export function asFailure(refusal: { readonly code: 'refused' | 'invalid-input' | 'conflict'; readonly message: string; readonly next: string; readonly field?: string }): { readonly ok: false; readonly error: Failure } {
  const { code, message, next, field } = refusal;
  return err({ code, message, next, ...(field === undefined ? {} : { fields: { [field]: message } }) });
}
