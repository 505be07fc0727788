import { safeName } from '../../app/bundle/safe-name.ts';
import { ok } from '../../app/result.ts';
import { memorySink } from '../bundle/byte-sink.ts';
import { writeBundle } from '../bundle/write-bundle.ts';
import { notFound } from './failures.ts';
import type { Services } from './service.ts';
import { refuseWithheld } from './withhold-first.ts';
import { reading, type WorkDeps } from './work-context.ts';

/** The bundle of one case, in memory: the window saves it itself. */
export function createBundleService(deps: WorkDeps): Services['cases.bundle'] {
  return reading(deps, 'cases.bundle', async ({ caseId }, work) => {
    const found = await work.casebook.cases.get(caseId);
    if (found === null) return notFound('This case');
    const { id, number, receivedAt } = found;
    const telling = refuseWithheld([id], work);
    if (telling !== null) return telling;
    const sink = memorySink();
    const written = await writeBundle({ cases: [{ id, number, receivedAt }], period: null, sink }, work);
    return written.ok ? ok({ name: `${safeName(number)}.zip`, zip: sink.whole() }) : written;
  });
}
