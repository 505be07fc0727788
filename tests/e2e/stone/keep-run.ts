import type { Input, Output } from '../../../app/contract/index.ts';
import type { OpenCulet } from '../harness/launch.ts';
import { callDoor } from '../steps/call-door.ts';
import type { MadeFile } from './stone-files.ts';

type Run = Input<'runs.record'>;

/** Keeps a run without the sheet, for tests that are about what comes after. The instrument is the first in order that fits. */
export async function keepRun(culet: Pick<OpenCulet, 'page'>, stoneId: string, method: Run['method'], files: readonly MadeFile[], some: Partial<Run> = {}): Promise<Output<'runs.record'>> {
  const instruments = await callDoor(culet, 'instruments.list', {});
  const instrument = instruments.find((i) => i.methods.includes(method) && i.state === 'in-order');
  return callDoor(culet, 'runs.record', {
    stoneId, method, instrumentId: instrument?.id ?? null, laserNm: instrument?.remembers.laserNm ?? null, temperatureK: 295, integrationMs: null, resolution: null,
    cautions: ['laser', 'ultraviolet'], observation: null, note: '', files: files.map((file) => ({ name: file.name, bytes: new Uint8Array(file.buffer) })), ...some,
  });
}
