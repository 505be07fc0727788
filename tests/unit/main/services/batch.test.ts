import { describe, expect, test } from 'vitest';
import { analysisParameters } from '../../../../app/spectra/analysis.ts';
import { infraredInstrument, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { createBatchServices } from '../../../../main/services/batch.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import type { TaskPool } from '../../../../main/workers/task-pool.ts';
import { columnsOf, jcampOf, openHouse } from './work-house.ts';

const parameters = analysisParameters.parse({ method: 'photoluminescence', laserNm: 532 });
const curve = (seed: number) => simulatePhotoluminescence(simulatedStone('natural-ia', seed), emissionInstrument({ points: 900 }), seed);
const call = (events: unknown[] = [], signal = new AbortController().signal) => ({ session: { personId: 'ada' }, signal, emit: (event: unknown) => { events.push(event); } });
const files = (count: number) => Array.from({ length: count }, (_, i) => ({ name: `stone ${i}.txt`, bytes: columnsOf(curve(i)), xUnit: 'nm' as const }));

describe('a batch', () => {
  test('gives a row for each curve in the order of the files, keeps none, and says how far it is', async () => {
    const events: { done: number; task: string }[] = [];
    const services = createBatchServices({ pool: createInlinePool(), casebook: () => null });
    const outcome = await services['batch.analyse']({ task: 'a', files: files(9), parameters }, call(events));
    if (!outcome.ok) throw new Error(outcome.error.message);
    expect(outcome.value.map((row) => row.file)).toEqual(files(9).map((file) => file.name));
    expect(outcome.value.every((row) => row.error === null && row.findings.length > 0 && row.diamond !== null)).toBe(true);
    expect(events.map((event) => event.done)).toEqual([4, 8, 9]);
    expect(events.every((event) => event.task === 'a')).toBe(true);
  });
  test('a file that cannot be read or analysed has its row with the sentence', async () => {
    const services = createBatchServices({ pool: createInlinePool(), casebook: () => null });
    const bad = [
      { name: 'letter.txt', bytes: new TextEncoder().encode('Dear Sir') }, { name: 'no unit.txt', bytes: columnsOf(curve(1)) },
      { name: 'good.jdx', bytes: jcampOf('good', curve(2), 'NANOMETERS') }, { name: 'empty', bytes: new Uint8Array(0) },
    ];
    const outcome = await services['batch.analyse']({ task: 'a', files: bad, parameters }, call());
    if (!outcome.ok) throw new Error(outcome.error.message);
    expect(outcome.value.map((row) => row.error?.code ?? 'analysed')).toEqual(['no-data', 'axis-unit-missing', 'analysed', 'empty-file']);
  });
  test('stands on the laboratory’s own lattice coefficient, as runs do', async () => {
    const house = await openHouse();
    try {
      const laboratory = (await house.casebook.laboratory.get())!;
      const infrared = simulateInfrared(simulatedStone('natural-ia', 3), infraredInstrument(), 3);
      const pathMm = async (twoPhononCoefficient: number): Promise<number> => {
        const { name, address, zone, logo, settings } = laboratory;
        await house.casebook.laboratory.save({ at: house.now(), personId: house.examiner, operation: 'laboratory.save' }, { name, address, zone, logo, settings: { ...settings, twoPhononCoefficient } });
        const services = createBatchServices({ pool: createInlinePool(), casebook: () => house.casebook });
        const outcome = await services['batch.analyse']({ task: 'a', files: [{ name: 'ir.jdx', bytes: jcampOf('IR', infrared, '1/CM', 'INFRARED SPECTRUM') }], parameters: analysisParameters.parse({ method: 'infrared' }) }, call());
        const statement = outcome.ok ? outcome.value[0]!.findings.find((finding) => finding.code === 'infrared:lattice')!.statement : '';
        return Number(/path ([\d.]+) mm/.exec(statement)![1]);
      };
      expect(await pathMm(14) / await pathMm(10)).toBeCloseTo(10 / 14, 1);
    } finally {
      house.close();
    }
  });
  test('is stopped by its name, and another goes on', async () => {
    const waiting: (() => void)[] = [];
    const inline = createInlinePool();
    const slow: TaskPool = {
      ...inline,
      async run(name, payload, options = {}) {
        await new Promise<void>((resolve) => { waiting.push(resolve); options.signal?.addEventListener('abort', () => { resolve(); }); });
        return inline.run(name, payload, options);
      },
    };
    const services = createBatchServices({ pool: slow, casebook: () => null });
    const stopped = services['batch.analyse']({ task: 'one', files: files(6), parameters }, call());
    const other = services['batch.analyse']({ task: 'other', files: files(1), parameters }, call());
    expect(await services['work.cancel']({ task: 'one' }, call())).toEqual({ ok: true, value: { cancelled: 1 } });
    expect(await stopped).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    while (waiting.length > 0) waiting.pop()!();
    expect(await other).toMatchObject({ ok: true });
    expect(await services['work.cancel']({ task: 'one' }, call())).toEqual({ ok: true, value: { cancelled: 0 } });
  });
  test('ends with its window', async () => {
    const gone = new AbortController();
    gone.abort();
    const services = createBatchServices({ pool: createInlinePool(), casebook: () => null });
    expect(await services['batch.analyse']({ task: 'a', files: files(1), parameters }, call([], gone.signal))).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });
});
