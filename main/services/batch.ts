import type { BatchRow } from '../../app/batch/batch-row.ts';
import type { ParsedInput } from '../../app/contract/index.ts';
import { ok } from '../../app/result.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { createCancelTasks, type CancelTasks } from './cancel-tasks.ts';
import { withHouseScale } from './house-scale.ts';
import type { Services } from './service.ts';

/** Files a thread takes at a time: short enough that other work is not kept waiting, long enough that handing over costs little. */
const FILES_AT_A_TIME = 4;
/** Handed to the pool at once; the rest waits here, so that other tasks come in between. */
const HANDED_OVER = 2;

type File = ParsedInput<'batch.analyse'>['files'][number];

/** A view of part of a larger buffer would be sent to the thread with all of that buffer. */
const compact = (file: File): File => (file.bytes.byteLength === file.bytes.buffer.byteLength ? file : { ...file, bytes: file.bytes.slice() });

/** Analysing many files without keeping them, by the open casebook’s settings where there is one, and stopping long work. */
export function createBatchServices({ pool, casebook, tasks = createCancelTasks() }: { readonly pool: TaskPool; casebook(): Casebook | null; readonly tasks?: CancelTasks }): Pick<Services, 'batch.analyse' | 'work.cancel'> {
  return {
    async 'batch.analyse'({ task, files, parameters }, call) {
      const { signal, done } = tasks.begin(task, call.signal);
      const open = casebook();
      const told = open === null ? parameters : await withHouseScale(parameters, { casebook: open });
      const groups = Array.from({ length: Math.ceil(files.length / FILES_AT_A_TIME) }, (_, i) => files.slice(FILES_AT_A_TIME * i, FILES_AT_A_TIME * (i + 1)));
      const rows: BatchRow[][] = groups.map(() => []);
      let next = 0;
      let finished = 0;
      let failure: ReturnType<typeof taskFailure> | null = null;
      const lane = async (): Promise<void> => {
        while (next < groups.length && failure === null) {
          const at = next++;
          const outcome = await pool.run('batch-rows', { files: groups[at]!.map(compact), parameters: told }, { signal });
          if (!outcome.ok) { failure = taskFailure(outcome.error); return; }
          rows[at] = outcome.value;
          finished += groups[at]!.length;
          call.emit({ kind: 'progress', task, done: finished, total: files.length, note: groups[at]!.at(-1)!.name });
        }
      };
      try {
        await Promise.all(Array.from({ length: HANDED_OVER }, lane));
      } finally {
        done();
      }
      return failure ?? ok(rows.flat());
    },

    'work.cancel': ({ task }) => Promise.resolve(ok({ cancelled: tasks.cancel(task) })),
  };
}
