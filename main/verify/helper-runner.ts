import { VerifyCancelled } from '../../db/verify/part.ts';
import type { Found, Piece, Runner } from '../../db/verify/pieces.ts';
import { startHelper, type HelperLink } from './start-helper.ts';
import type { HelperMessage, HelpersBy, VerifyFile } from './verify-messages.ts';

type Job = { readonly id: number; readonly piece: Piece; done(found: Found): void; failed(fault: Error): void };
/** A helper has two jobs: the next one lies ready when it is done with the first. */
type Helper = { link: HelperLink | null; readonly jobs: Map<number, Job> };
const JOBS_EACH = 2;

/** Takes long enough that whatever lay ready behind it would keep everybody waiting. */
const isLong = ({ kind }: Piece): boolean => kind === 'file' || kind === 'count' || kind === 'checkpoints';

export type HelperRunner = Runner & {
  /** Nothing more is wanted: what waits or is under way is rejected as stopped. */
  stop(): void;
  /** Lets the helpers go; done when all of them are gone. */
  end(): Promise<unknown>;
};

/** What SQLite threw in a helper, as if it had been thrown here. */
class HelperFault extends Error {
  readonly code: string;
  constructor(message: string, code: string) {
    super(message);
    this.code = code;
  }
}

/** A helper was gone before it was done: the work can be done without helpers. */
export class HelperLost extends Error {}

/** This machine does not let a helper open the file. */
export class HelperCannotOpen extends Error {}

/** The place among those that wait of the first job that this helper should have now, or -1. */
function nextFor({ jobs }: Helper, waiting: readonly Job[]): number {
  if (jobs.size === 0) return waiting.length > 0 ? 0 : -1;
  const inHand = [...jobs.values()];
  return jobs.size >= JOBS_EACH || inHand.some(({ piece }) => isLong(piece)) ? -1 : waiting.findIndex(({ piece }) => !isLong(piece));
}

/** Has pieces done by helpers with connections of their own; `more` hears how many things they looked at. */
export function createHelperRunner(options: VerifyFile & { readonly by: HelpersBy; readonly helpers: number }, more: (n: number) => void): HelperRunner {
  const waiting: Job[] = [];
  let nextId = 1;
  /** Why nothing is begun any more. */
  let over: Error | null = null;
  let ending = false;
  const gone: Promise<void>[] = [];

  const give = (): void => {
    for (const room of Array.from({ length: JOBS_EACH }, (_, i) => i)) {
      for (const helper of helpers) {
        const place = helper.link === null || helper.jobs.size > room ? -1 : nextFor(helper, waiting);
        if (place < 0) continue;
        const [job] = waiting.splice(place, 1);
        helper.jobs.set(job!.id, job!);
        helper.link!.post({ job: job!.id, piece: job!.piece });
      }
    }
  };

  const giveUp = (why: Error): void => {
    over ??= why;
    const all = [...helpers.flatMap(({ jobs }) => [...jobs.values()]), ...waiting.splice(0)];
    for (const helper of helpers) helper.jobs.clear();
    for (const job of all) job.failed(over);
  };

  const hear = (helper: Helper, message: HelperMessage): void => {
    if (message.kind === 'ready') return;
    if (message.kind === 'cannot-open') { giveUp(new HelperCannotOpen()); return; }
    if (message.kind === 'more') { more(message.more); return; }
    const job = helper.jobs.get(message.job);
    helper.jobs.delete(message.job);
    give();
    if (message.kind === 'found') job?.done(message.found);
    else job?.failed(new HelperFault(message.message, message.code));
  };

  const helpers = Array.from({ length: options.helpers }, (): Helper => ({ link: null, jobs: new Map() }));
  for (const helper of helpers) {
    gone.push(new Promise((resolve) => {
      helper.link = startHelper(options.by, { file: options.file, still: options.still }, {
        hear: (message) => { hear(helper, message); },
        fault: (fault) => { giveUp(fault); },
        gone: (how) => {
          if (!ending) giveUp(new HelperLost(how));
          resolve();
        },
      });
    }));
  }

  return {
    // Enough for every helper to have one in hand and one ready while the first is being looked at.
    ahead: 3 * options.helpers,
    run<P extends Piece>(piece: P) {
      return new Promise<Found<P>>((done, failed) => {
        if (over !== null) { failed(over); return; }
        waiting.push({ id: nextId++, piece, done: (found) => { done(found as Found<P>); }, failed });
        give();
      });
    },
    stop() { giveUp(new VerifyCancelled()); },
    end() {
      ending = true;
      for (const { link } of helpers) link!.end();
      return Promise.all(gone);
    },
  };
}
