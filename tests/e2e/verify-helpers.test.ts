import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { HELPER_SWITCH } from '../../main/verify/helper-switch.ts';
import { slowness } from '../fixtures/slowness.ts';
import { makeCasebook, stonesFor } from '../bench/ledgers/make-casebook.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { askDoor, callDoor } from './steps/call-door.ts';
import { workAs } from './steps/kept-data.ts';

/** Large enough that a check of it is worth a process: 19 MB. */
const ENTRIES = 20_000;
/** To measure: a casebook that `npm run bench -- ledgers --folder` left, of any size. It is copied. */
const MADE = process.env['CULET_VERIFY_CASEBOOK'];
const PAUSE_MS = 50;
const LIMIT_MS = 240_000;

/** Processes of this program that were started as helpers. */
function helpersOf(parent: number): number[] {
  return readdirSync('/proc').map(Number).filter((pid) => {
    try {
      return Number.isInteger(pid) && readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(HELPER_SWITCH) && readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ')[1] === String(parent);
    } catch {
      return false;
    }
  });
}

/** Lines of the log that say so. */
const logged = (dataDir: string, message: string): Record<string, unknown>[] =>
  readFileSync(join(dataDir, 'logs', 'culet.log'), 'utf8').split('\n').filter((line) => line !== '').map((line) => JSON.parse(line) as Record<string, unknown>).filter((line) => line['message'] === message);

/**
 * Begins to watch the main thread; the answer ends it and gives the longest time, ms, that it worked without letting anything else run. That is its own
 * processor time, as Linux tells it: on a machine that others keep busy a thread also stands still when it has nothing to do.
 */
async function watchMain({ electron }: OpenCulet): Promise<() => Promise<{ worked: number; stood: number }>> {
  await electron!.evaluate(() => {
    const { readFileSync: read } = process.mainModule!.require('node:fs') as { readFileSync(file: string, coding: 'utf8'): string };
    const worked = (): number => Number(read(`/proc/self/task/${process.pid}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
    const watch = { worked: 0, stood: 0, timer: undefined as NodeJS.Timeout | undefined };
    let [lastWorked, last] = [worked(), performance.now()];
    watch.timer = setInterval(() => {
      const [nowWorked, now] = [worked(), performance.now()];
      watch.worked = Math.max(watch.worked, nowWorked - lastWorked);
      watch.stood = Math.max(watch.stood, now - last);
      [lastWorked, last] = [nowWorked, now];
    }, 5);
    (globalThis as unknown as { watch: typeof watch }).watch = watch;
  });
  return () => electron!.evaluate(() => {
    const { watch } = globalThis as unknown as { watch: { worked: number; stood: number; timer: NodeJS.Timeout } };
    clearInterval(watch.timer);
    return { worked: watch.worked, stood: watch.stood };
  });
}

async function helpersStarted(pid: number): Promise<number[]> {
  for (const end = Date.now() + LIMIT_MS; Date.now() < end;) {
    const there = helpersOf(pid);
    if (there.length > 1) return there;
    await new Promise((resolve) => { setTimeout(resolve, 20); });
  }
  throw new Error('no helper was started');
}

// What tells of processes and of a thread's own time is Linux's.
describe.runIf(process.platform === 'linux').each(availableHosts().filter((host) => host === 'electron'))('verifying a large casebook in %s', (host) => {
  const folder = mkdtempSync(join(tmpdir(), 'culet-e2e-'));
  let culet: OpenCulet;
  beforeAll(async () => {
    const file = join(folder, 'Casebook.culet');
    if (MADE === undefined) (await makeCasebook(folder, stonesFor(ENTRIES), () => {})).casebook.close();
    else copyFileSync(MADE, file);
    culet = await openCulet({ host, dataDir: folder, casebook: file });
    await workAs(culet, 'Ada Invented');
  }, LIMIT_MS);
  afterAll(async () => {
    await culet.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  test('is done by further processes of the program, while its own is free', async () => {
    const ended = await watchMain(culet);
    const asked = callDoor(culet, 'ledgers.verify', {});
    const helpers = await helpersStarted(culet.pid);
    expect(await asked).toMatchObject({ sound: true });
    const { worked, stood } = await ended();
    const [how] = logged(folder, 'verified').slice(-1);
    console.log(`verified by ${String(how!['by'])}: ${helpers.length} further processes of ${readFileSync(`/proc/${culet.pid}/cmdline`, 'utf8').split('\0')[0]!}, ${String(how!['ms'])} ms; the main thread worked ${worked.toFixed(0)} ms at a stretch at most, and stood still for ${stood.toFixed(0)} ms`);
    expect(how).toMatchObject({ by: 'processes' });
    expect(worked).toBeLessThan(PAUSE_MS * slowness());
    expect(helpersOf(culet.pid)).toEqual([]);
  }, LIMIT_MS);

  test('goes on without them when they are ended from outside, and the log says so', async () => {
    const asked = callDoor(culet, 'ledgers.verify', {});
    for (const pid of await helpersStarted(culet.pid)) process.kill(pid, 'SIGKILL');
    expect(await asked).toMatchObject({ sound: true });
    expect(logged(folder, 'verifying goes on without helpers')).toMatchObject([{ why: 'a helping process was ended (SIGKILL)' }]);
    expect(helpersOf(culet.pid)).toEqual([]);
  }, LIMIT_MS);

  test('can be stopped, and leaves no process behind', async () => {
    await culet.page.getByRole('link', { name: 'Ledgers' }).click();
    await culet.page.getByRole('heading', { level: 1, name: 'Ledgers' }).waitFor();
    await culet.page.keyboard.press('v');
    await helpersStarted(culet.pid);
    await culet.page.getByRole('progressbar', { name: 'Verified' }).waitFor();
    await culet.page.keyboard.press('Escape');
    await culet.page.getByText('Stopped. Nothing was found or ruled out.').waitFor();
    expect(helpersOf(culet.pid)).toEqual([]);
    expect(await askDoor(culet, 'ledgers.verify', {})).toMatchObject({ ok: true });
  }, LIMIT_MS);
});
