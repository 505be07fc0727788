import { contract, type DoorEvent, type OperationName } from '../../app/contract/index.ts';
import type { Failure, Reply } from '../../app/contract/failure.ts';
import type { Operation } from '../../app/contract/operation.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Call, Services, Session } from '../services/service.ts';
import { describeInputErrors, plainSentence } from './describe-input-errors.ts';
import type { Log } from './log.ts';
import { refuseByRole, type Standing } from './refuse-by-role.ts';

/** A call that takes longer is logged by name: the log decides what moves to a worker. */
export const SLOW_CALL_MS = 40;

/** What stands behind the door, whichever host carries the call. */
export type House = {
  readonly services: Services;
  standing(session: Session): Promise<Standing>;
  /** Somebody is at work at this window. */
  touch(session: Session): void;
  /** Tells every window. */
  announce(event: DoorEvent): void;
  readonly log: Log;
  newId(): string;
};

/**
 * Carries one call through the door: known name, permitted person, valid input, the service itself, valid output.
 * Never throws. A fault inside a service becomes 'internal' with a reference under which the log keeps the stack.
 */
export async function dispatch(house: House, name: string, raw: unknown, call: Call): Promise<Reply<unknown>> {
  if (!isOperation(name)) return err(unknownOperation(name));
  const started = performance.now();
  try {
    return await admitAndRun(house, name, raw, call);
  } catch (fault) {
    return err(call.signal.aborted ? cancelled() : recordFault(house, name, fault));
  } finally {
    const ms = Math.round(performance.now() - started);
    if (ms > SLOW_CALL_MS) house.log.info('slow call', { name, ms });
  }
}

/** True for the names of the contract, and for nothing that an object inherits. */
export function isOperation(name: string): name is OperationName {
  return Object.hasOwn(contract, name);
}

async function admitAndRun(house: House, name: OperationName, raw: unknown, call: Call): Promise<Reply<unknown>> {
  const operation: Operation = contract[name];
  const refusal = operation.may === 'door' ? null : refuseByRole(operation.may, await house.standing(call.session));
  if (refusal !== null) return err(refusal);
  const input = operation.input.safeParse(raw, { error: plainSentence });
  if (!input.success) return err(describeInputErrors(input.error.issues));
  if (call.signal.aborted) return err(cancelled());
  if (operation.changes) house.touch(call.session);
  // The input was parsed by this very operation's schema, which the mapped type cannot see through a name known only at run time.
  const service = house.services[name] as unknown as (input: unknown, call: Call) => Promise<Result<unknown, Failure>>;
  const result = await service(input.data, call);
  if (!result.ok) return err(result.error);
  if (operation.changes) house.announce({ kind: 'changed', operation: name });
  return ok(operation.output.parse(result.value));
}

function unknownOperation(name: string): Failure {
  return {
    code: 'not-found',
    message: `Culet has no operation “${name.slice(0, 60)}”.`,
    next: 'Close the window and open it again: it may belong to another version of Culet.',
  };
}

function cancelled(): Failure {
  return { code: 'cancelled', message: 'The call was stopped before it was finished.', next: 'Start it again when you want it.' };
}

const REFERENCE_LENGTH = 8;

function recordFault(house: House, name: OperationName, fault: unknown): Failure {
  const reference = house.newId().slice(-REFERENCE_LENGTH);
  house.log.error('fault', { name, reference, stack: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault) });
  return {
    code: 'internal',
    message: `Something went wrong inside Culet (reference ${reference}).`,
    next: contract[name].changes
      ? `Look whether the change is there before you try again. If it happens again, give the reference ${reference} to whoever looks after Culet; the log explains it.`
      : `Try again. If it happens again, give the reference ${reference} to whoever looks after Culet; the log explains it.`,
  };
}
