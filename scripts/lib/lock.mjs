import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}

/** @param {string} folder */
function holderIsAlive(folder) {
  try {
    return isAlive(Number(readFileSync(join(folder, 'pid'), 'utf8')));
  } catch {
    return false;
  }
}

/**
 * Does `work` while no other process does it: two commands started together must not write the same files.
 * A lock left by a process that died is taken over.
 * @template T
 * @param {string} folder stands for the lock; made and removed here
 * @param {() => Promise<T>} work
 * @param {{ limitMs?: number, pauseMs?: number }} [options] how long to wait for another process before going on without the lock
 * @returns {Promise<T>}
 */
export async function alone(folder, work, { limitMs = 300_000, pauseMs = 200 } = {}) {
  mkdirSync(dirname(folder), { recursive: true });
  const until = Date.now() + limitMs;
  for (let holderSeen = true; ;) {
    try {
      mkdirSync(folder);
      break;
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    }
    // Between making the folder and writing the number there is a moment without a holder: two looks decide.
    const alive = holderIsAlive(folder);
    if ((!alive && !holderSeen) || Date.now() > until) rmSync(folder, { recursive: true, force: true });
    holderSeen = alive;
    await sleep(pauseMs);
  }
  writeFileSync(join(folder, 'pid'), String(process.pid));
  try {
    return await work();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
