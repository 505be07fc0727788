import type { Failure } from '../../app/contract/failure.ts';
import type { OperationName, Output, ParsedInput } from '../../app/contract/index.ts';
import { err, type Result } from '../../app/result.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { Keyring } from '../keys/keyring.ts';
import type { SessionGuard } from '../people/session-guard.ts';
import type { CasebookManager } from '../casebook/casebook-manager.ts';
import type { Verify } from '../verify/verify-with-helpers.ts';
import type { CancelTasks } from './cancel-tasks.ts';
import { noCasebook } from './failures.ts';
import type { Call, Deps, Service } from './service.ts';

/** Facts about the host that the window shows. */
export type HostFacts = { readonly version: string; readonly host: 'electron' | 'loopback'; readonly hostNote: string };

export type IntakeDeps = Deps & { readonly manager: CasebookManager; readonly keyring: Keyring; readonly guard: SessionGuard; readonly verify: Verify; readonly host: HostFacts; readonly tasks?: CancelTasks };

export type PersonChange = Change & { readonly personId: string };

/** An operation that only reads: given the open casebook. */
export function reading<K extends OperationName>(
  deps: IntakeDeps, work: (casebook: Casebook, input: ParsedInput<K>, call: Call) => Promise<Result<Output<K>, Failure>>,
): Service<K> {
  return async (input, call) => {
    const casebook = deps.manager.current();
    if (casebook === null) return noCasebook();
    try {
      return await work(casebook, input, call);
    } catch (e) {
      // A long list lets others in between, and one of them may close the casebook: nobody waits for this answer any more.
      if (deps.manager.current() !== casebook) return noCasebook();
      throw e;
    }
  };
}

/** An operation that changes records: given the open casebook and what the change says about itself in the ledgers. */
export function changing<K extends OperationName>(
  deps: IntakeDeps, operation: K, work: (casebook: Casebook, change: PersonChange, input: ParsedInput<K>, call: Call) => Promise<Result<Output<K>, Failure>>,
): Service<K> {
  return async (input, call) => {
    const casebook = deps.manager.current();
    if (casebook === null) return noCasebook();
    const person = call.session.personId === null ? null : await casebook.people.get(call.session.personId);
    if (person === null || !person.active) {
      return err({ code: 'not-allowed', message: 'Nobody has signed in at this window.', next: 'Sign in, then try again.' });
    }
    return work(casebook, { at: deps.now().toISOString(), personId: person.id, operation }, input, call);
  };
}
