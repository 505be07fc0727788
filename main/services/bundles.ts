import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { judgeBundle } from '../../app/bundle/judge-bundle.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok } from '../../app/result.ts';
import { fileSink } from '../bundle/byte-sink.ts';
import { casesOfPeriod } from '../bundle/cases-of-period.ts';
import { writeBundle } from '../bundle/write-bundle.ts';
import { checkUpload } from '../uploads/check-upload.ts';
import type { Uploads } from '../uploads/uploads.ts';
import type { CancelTasks } from './cancel-tasks.ts';
import { KNOWN_TO_NOBODY, knownFor } from './known-for-reports.ts';
import type { Services } from './service.ts';
import { refuseWithheld } from './withhold-first.ts';
import { reading, type WorkDeps } from './work-context.ts';

/** Beside the casebook, as its backups are: the window has no other way to write more than fits into memory. */
const FOLDER = 'bundles';

const cannotWrite = (folder: string, fault: Error & { code?: unknown }): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'refused', message: `The bundle could not be written to ${folder} (${String(fault.code)}).`, next: 'Make room on that disk, or see that Culet may write there, then try again.' });

/** Bundles of a period, and checking a bundle that somebody brings, with or without a casebook. */
export function createBundlesServices(deps: WorkDeps & { readonly tasks: CancelTasks; readonly uploads: Uploads }): Pick<Services, 'bundles.check' | 'bundles.writePeriod'> {
  return {
    async 'bundles.check'({ upload }, call) {
      const whole = deps.uploads.whole(call.session, upload);
      if (!whole.ok) return whole;
      const checked = await checkUpload(whole.value, deps.pool, call);
      if (!checked.ok) return checked;
      const open = deps.casebook();
      const { keys } = open === null ? KNOWN_TO_NOBODY : await knownFor(open);
      return ok({ ...judgeBundle(checked.value.check, keys), sha256: checked.value.sha256, bytes: whole.value.size });
    },

    'bundles.writePeriod': reading(deps, 'bundles.writePeriod', async ({ task, from, to }, work) => {
      const cases = await casesOfPeriod(work.casebook, { from, to });
      if (!cases.ok) return cases;
      const telling = refuseWithheld(cases.value.map(({ id }) => id), work);
      if (telling !== null) return telling;
      const folder = path.join(path.dirname(work.casebook.file), FOLDER);
      const { signal, done } = deps.tasks.begin(task, work.call.signal);
      try {
        await mkdir(folder, { recursive: true });
        const file = path.join(folder, `Bundle ${from} to ${to}, written ${work.at.replace(/[-:]|\.\d+/g, '')}.zip`);
        const sink = await fileSink(file, deps.newId());
        const progress = (finished: number, total: number, note: string): void => { work.call.emit({ kind: 'progress', task, done: finished, total, note }); };
        const written = await writeBundle({ cases: cases.value, period: { from, to }, sink, progress }, { ...work, call: { ...work.call, signal } });
        return written.ok ? ok({ file, ...written.value }) : written;
      } catch (fault) {
        // A disk that is full or was taken away; anything else is a fault of the program.
        if (fault instanceof Error && 'syscall' in fault) return cannotWrite(folder, fault);
        throw fault;
      } finally {
        done();
      }
    }),
  };
}
