import type { DoorEvent } from '../../app/contract/index.ts';
import type { Reply } from '../../app/contract/failure.ts';
import { contract } from '../../app/contract/index.ts';
import { err } from '../../app/result.ts';
import type { Session } from '../services/service.ts';
import { dispatch, isOperation, type House } from './dispatch.ts';

/** Longest time that closing waits for changes that are being written. */
export const DRAIN_LIMIT_MS = 15_000;

export type Caller = {
  readonly session: Session;
  emit(event: DoorEvent): void;
  /** Ends when the window is gone. */
  readonly gone: AbortSignal;
};

export type CallsInFlight = {
  run(name: string, raw: unknown, caller: Caller): Promise<Reply<unknown>>;
  /** Takes no more calls, stops those that only read, and waits until the changes are written (or `limitMs` has passed). */
  close(limitMs?: number): Promise<void>;
};

/** Counts the calls under way, so that closing neither loses a change nor waits for someone who is only looking. */
export function createCallsInFlight(house: House): CallsInFlight {
  const running = new Set<Promise<unknown>>();
  const closing = new AbortController();
  return {
    async run(name, raw, caller) {
      if (closing.signal.aborted) return err({ code: 'cancelled', message: 'Culet is closing.', next: 'Open Culet again.' });
      const work = dispatch(house, name, raw, { session: caller.session, emit: (event) => { caller.emit(event); }, signal: signalFor(name, caller, closing.signal) });
      running.add(work);
      try {
        return await work;
      } finally {
        running.delete(work);
      }
    },
    async close(limitMs = DRAIN_LIMIT_MS) {
      closing.abort();
      let timer: NodeJS.Timeout | undefined;
      const limit = new Promise((resolve) => { timer = setTimeout(resolve, limitMs); });
      await Promise.race([Promise.allSettled([...running]), limit]);
      clearTimeout(timer);
    },
  };
}

/** A change that has begun is finished even if its window is closed. */
function signalFor(name: string, caller: Caller, closing: AbortSignal): AbortSignal {
  if (isOperation(name) && contract[name].changes) return new AbortController().signal;
  const either = new AbortController();
  for (const signal of [caller.gone, closing]) {
    if (signal.aborted) either.abort();
    else signal.addEventListener('abort', () => { either.abort(); }, { once: true, signal: either.signal });
  }
  return either.signal;
}
