import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { createTaskPool, type TaskPool } from '../../../../main/workers/task-pool.ts';
import { taskFailure } from '../../../../main/workers/task-failure.ts';

/** A worker that speaks the pool's language and does what its payload says. */
const STUB = `
import { parentPort, threadId } from 'node:worker_threads';
parentPort.on('message', ({ job, payload }) => {
  if (payload.do === 'echo') parentPort.postMessage({ kind: 'done', job, value: { thread: threadId, echo: payload.value } });
  if (payload.do === 'steps') { for (let i = 1; i <= 3; i++) parentPort.postMessage({ kind: 'progress', job, done: i, total: 3, note: '' }); parentPort.postMessage({ kind: 'done', job, value: null }); }
  if (payload.do === 'fault') parentPort.postMessage({ kind: 'fault', job, message: 'made to fail', stack: '' });
  if (payload.do === 'throw') throw new Error('thrown in the thread');
  if (payload.do === 'exit') process.exit(3);
});
setInterval(() => {}, 1000);
`;

type Loose = { run(name: string, payload: unknown, options?: Parameters<TaskPool['run']>[2]): ReturnType<TaskPool['run']> };
let folder: string;
let pool: TaskPool;
const loose = (): Loose => pool as unknown as Loose;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'culet-pool-'));
  writeFileSync(path.join(folder, 'stub.mjs'), STUB);
});
afterEach(() => pool.close());
afterAll(() => rmSync(folder, { recursive: true }));

describe('the pool of worker threads', () => {
  const start = (size?: number): void => { pool = createTaskPool({ workerFile: path.join(folder, 'stub.mjs'), ...(size === undefined ? {} : { size }) }); };

  test('gives results back, and progress on the way', async () => {
    start();
    expect(await loose().run('any', { do: 'echo', value: Float64Array.of(1, 2) })).toMatchObject({ ok: true, value: { echo: Float64Array.of(1, 2) } });
    const steps: number[] = [];
    await loose().run('any', { do: 'steps' }, { onProgress: (step) => steps.push(step.done) });
    expect(steps).toEqual([1, 2, 3]);
  });

  test('uses no more threads than it may, and does all that waits', async () => {
    start(2);
    const outcomes = await Promise.all(Array.from({ length: 20 }, (_, value) => loose().run('any', { do: 'echo', value })));
    const values = outcomes.map((outcome) => outcome.ok ? outcome.value as unknown as { thread: number; echo: number } : null);
    expect(values.map((value) => value?.echo)).toEqual(Array.from({ length: 20 }, (_, value) => value));
    expect(new Set(values.map((value) => value?.thread)).size).toBeLessThanOrEqual(2);
  });

  test.each([['fault', 'faulted'], ['throw', 'crashed'], ['exit', 'crashed']])('a task that ends by %s is a typed failure, and the next one works', async (how, code) => {
    start(1);
    const failed = await loose().run('any', { do: how });
    expect(failed.ok ? null : failed.error.code).toBe(code);
    expect((await loose().run('any', { do: 'echo', value: 7 })).ok).toBe(true);
  });

  test('a payload that can’t cross the border is a failure, not an exception', async () => {
    start(1);
    const failed = await loose().run('any', { do: 'echo', value: () => 1 });
    expect(failed.ok ? null : failed.error.code).toBe('faulted');
    expect((await loose().run('any', { do: 'echo', value: 7 })).ok).toBe(true);
  });

  test('cancelling ends a running task and takes back a waiting one', async () => {
    start(1);
    const running = new AbortController();
    const waiting = new AbortController();
    const first = loose().run('any', { do: 'nothing' }, { signal: running.signal });
    const second = loose().run('any', { do: 'echo', value: 2 }, { signal: waiting.signal });
    const third = loose().run('any', { do: 'echo', value: 3 });
    waiting.abort();
    running.abort();
    for (const cancelled of [await first, await second]) expect(cancelled.ok ? null : cancelled.error.code).toBe('cancelled');
    expect((await third).ok).toBe(true);
    const late = await loose().run('any', { do: 'echo' }, { signal: running.signal });
    expect(late.ok ? null : late.error.code).toBe('cancelled');
  });

  test('closing gives back what still runs as cancelled', async () => {
    start(1);
    const running = loose().run('any', { do: 'nothing' });
    await pool.close();
    const outcome = await running;
    expect(outcome.ok ? null : outcome.error.code).toBe('cancelled');
  });

  test('the entry of the bundle answers by task name, with the same outcome as on the calling thread', async () => {
    pool = createTaskPool({ workerFile: new URL('../../../../main/workers/worker.ts', import.meta.url), size: 1 });
    const payload = { bytes: new TextEncoder().encode('the same\n'.repeat(50)), store: false };
    const inThread = await pool.run('pack-file', payload);
    const inline = await createInlinePool().run('pack-file', payload);
    expect(inThread).toEqual(inline);
    expect(inThread.ok).toBe(true);
    const unknown = await loose().run('constructor', {});
    expect(unknown.ok ? null : unknown.error.code).toBe('faulted');
  });
});

test('a cancelled task is an answer; a crashed one is a fault for the log', () => {
  expect(taskFailure({ code: 'cancelled', message: '' }).error.code).toBe('cancelled');
  expect(() => taskFailure({ code: 'crashed', message: 'why' })).toThrow(/why/);
});
