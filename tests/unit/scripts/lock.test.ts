import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { alone } from '../../../scripts/lib/lock.mjs';

let base = '';
beforeEach(() => { base = mkdtempSync(join(tmpdir(), 'culet-lock-')); });
afterEach(() => rmSync(base, { recursive: true, force: true }));

test('two pieces of work never overlap', async () => {
  const lock = join(base, 'lock');
  let inside = 0;
  let most = 0;
  const work = async () => {
    inside += 1;
    most = Math.max(most, inside);
    await new Promise((resolve) => setTimeout(resolve, 30));
    inside -= 1;
  };
  await Promise.all([alone(lock, work, { pauseMs: 5 }), alone(lock, work, { pauseMs: 5 }), alone(lock, work, { pauseMs: 5 })]);
  expect(most).toBe(1);
  expect(existsSync(lock)).toBe(false);
});

test('a lock left by a process that died is taken over', async () => {
  const lock = join(base, 'lock');
  const gone = spawnSync(process.execPath, ['-e', '0']).pid;
  mkdirSync(lock);
  writeFileSync(join(lock, 'pid'), String(gone));
  await expect(alone(lock, async () => 'done', { pauseMs: 5 })).resolves.toBe('done');
});

test('work that fails gives the lock back', async () => {
  const lock = join(base, 'lock');
  await expect(alone(lock, async () => { throw new Error('broken'); })).rejects.toThrow('broken');
  expect(existsSync(lock)).toBe(false);
});
