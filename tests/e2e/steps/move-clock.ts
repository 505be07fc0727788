import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { OpenCulet } from '../harness/launch.ts';

/** Patches `Date` of a process: ahead by the milliseconds that `file` says. In plain JavaScript, since it is loaded before anything else. */
const patch = (file: string) => `
const { readFileSync } = require('node:fs');
const Real = Date;
const ahead = () => { try { return Number(readFileSync(${JSON.stringify(file)}, 'utf8')); } catch { return 0; } };
globalThis.Date = class extends Real {
  constructor(...given) { if (given.length === 0) super(Real.now() + ahead()); else super(...given); }
  static now() { return Real.now() + ahead(); }
};`;

/** A clock of the main process that a test puts forward; the program itself knows nothing of it. */
export function movableClock(folder: string) {
  const file = join(folder, 'ahead');
  const script = join(folder, 'clock.cjs');
  writeFileSync(script, patch(file));
  return {
    /** For the loopback host, whose process takes it from the start. */
    env: { NODE_OPTIONS: `--require=${script}` },
    /** For Electron, whose main process takes it while it runs. */
    async enter({ electron }: Pick<OpenCulet, 'electron'>): Promise<void> {
      await electron?.evaluate((_electron, text) => { (process as unknown as { mainModule: { require(name: string): unknown } }).mainModule.require(text); }, script);
    },
    forward(ms: number): void { writeFileSync(file, String(ms)); },
  };
}
