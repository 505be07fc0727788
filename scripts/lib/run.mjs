import { spawn } from 'node:child_process';
import { root, toolEnvironment } from './paths.mjs';

/**
 * @typedef {object} RunOptions
 * @property {NodeJS.ProcessEnv} [env] the whole environment; the tools' own by default
 * @property {import('node:child_process').StdioOptions} [stdio] `inherit` by default
 * @property {string} [cwd] the repository's folder by default
 * @property {number} [limitMs] ends the command when it takes longer
 *
 * @typedef {object} Ended
 * @property {number} code 0 only when all went well; 128 + n after a signal, as a shell counts it
 * @property {boolean} killed whether the time limit ended it
 */

/**
 * Runs a program to its end. Interrupts reach the program, and this process waits for it.
 * @param {string} command a program's file, never a shell line
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 * @returns {Promise<Ended>} code 127 when the program could not be started
 */
export function run(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: options.cwd ?? root, env: options.env ?? toolEnvironment(), stdio: options.stdio ?? 'inherit', windowsHide: true,
      // npm on Windows is a .cmd file, which only a shell can start.
      shell: process.platform === 'win32' && command.endsWith('.cmd'),
    });
    let killed = false;
    const timer = options.limitMs === undefined ? undefined
      : setTimeout(() => { killed = true; child.kill('SIGKILL'); }, options.limitMs);
    // Ctrl-C goes to the whole group: the child decides when it has finished its work.
    const wait = () => {};
    const passOn = () => { child.kill('SIGTERM'); };
    process.on('SIGINT', wait);
    process.on('SIGTERM', passOn);
    /** @param {number} code */
    const end = (code) => {
      clearTimeout(timer);
      process.off('SIGINT', wait);
      process.off('SIGTERM', passOn);
      resolve({ code, killed });
    };
    child.once('error', () => end(127));
    child.once('close', (code, signal) => end(code ?? 128 + (signal === 'SIGINT' ? 2 : signal === 'SIGTERM' ? 15 : 9)));
  });
}
