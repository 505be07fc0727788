import { randomUUID } from 'node:crypto';
import type { House } from '../../../main/host/dispatch.ts';
import { silentLog } from '../../../main/host/log.ts';
import type { Casebook } from '../../../db/open-casebook.ts';
import { createFiguresServices } from '../../../main/services/figures.ts';
import { createHistoryServices } from '../../../main/services/history.ts';
import type { IntakeDeps } from '../../../main/services/intake-context.ts';
import { createIntakeServices } from '../../../main/services/intake-services.ts';
import type { Call, Services } from '../../../main/services/service.ts';
import { createWorkServices } from '../../../main/services/work-services.ts';
import { createInlinePool } from '../../../main/workers/inline-pool.ts';

const quiet = () => undefined;

/** What stands behind both hosts, over one open casebook with its manager at the window. Only its lists: nothing here writes, signs, or leaves this process. */
export async function readingHouse(casebook: Casebook): Promise<{ readonly house: House; readonly call: Call }> {
  const person = (await casebook.people.list()).find((one) => one.roles.includes('manager'))!;
  const shared = { now: () => new Date('2026-11-25T09:00:00.000Z'), newId: randomUUID };
  const deps = { ...shared, manager: { current: () => casebook } } as unknown as IntakeDeps;
  const services = {
    ...createIntakeServices(deps), ...createHistoryServices(deps), ...createFiguresServices(deps),
    ...createWorkServices({ ...shared, casebook: () => casebook, pool: createInlinePool(), signer: null as never }),
  } as unknown as Services;
  return {
    house: {
      services, standing: async () => ({ casebookOpen: true, person }), touch: quiet, announce: quiet, newId: randomUUID,
      log: { ...silentLog, error: (message, entry) => { console.error(message, entry); } },
    },
    call: { session: { personId: person.id }, signal: new AbortController().signal, emit: quiet },
  };
}
