import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { airFromRamanShift } from '../../../../app/spectra/convert-axis.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { madeLamp } from '../../app/calibration/made-lamp.ts';
import { columnsOf, jcampOf, openHouse, type House } from './work-house.ts';

let house: House;
let instrumentId: string;
beforeEach(async () => {
  house = await openHouse();
  instrumentId = (await house.done(house.examiner, 'instruments.save', { id: null, name: 'Bench laser', methods: ['photoluminescence'], serial: '', place: '', remembers: { laserNm: 532 }, checkEveryDays: 7, active: true })).id;
});
afterEach(() => house.close());

/** What the instrument shows: everything 0.8 nm too long. */
const shown = (truth: number): number => truth + 0.8;
const lamp = jcampOf('neon', madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 0.5, shown }), 'NANOMETERS');
const input = () => ({ instrumentId, name: 'neon.jdx', bytes: lamp, standard: 'neon', ownLines: null });

async function recordRun() {
  const { stones } = await house.takeIn();
  const curve = simulatePhotoluminescence(simulatedStone('natural-ia', 5), emissionInstrument({ spikes: 0 }), 5);
  const bytes = jcampOf('stone', { ...curve, x: curve.x.map(shown) }, 'NANOMETERS', 'PHOTOLUMINESCENCE');
  return house.done(house.examiner, 'runs.record', {
    stoneId: Object.values(stones)[0]!, method: 'photoluminescence', instrumentId, laserNm: 532, temperatureK: 295, integrationMs: null, resolution: 0.5, cautions: ['laser'],
    files: [{ name: 'stone.jdx', bytes }], observation: null, note: '',
  });
}

describe('calibrating an instrument', () => {
  test('a trial says what would come out and keeps nothing', async () => {
    const trial = await house.done(house.examiner, 'instruments.tryCalibration', input());
    expect(trial.standard).toBe('neon lamp');
    expect(trial.fit.deviationRms).toBeCloseTo(0.8, 1);
    expect(trial.fit.residualRms).toBeLessThan(0.02);
    expect(trial.x.length).toBe(trial.y.length);
    const [instrument] = await house.done(house.examiner, 'instruments.list', {});
    expect(instrument).toMatchObject({ scale: null, lastCheck: null, state: 'never-checked' });
  });
  test('a kept one counts as a check in words, is in the audit ledger, and the newest governs', async () => {
    const kept = await house.done(house.examiner, 'instruments.calibrate', { ...input(), use: 'correct', passed: true });
    expect(kept).toMatchObject({ standard: 'neon lamp', unit: 'nm', use: 'correct', fileName: 'neon.jdx', by: 'Ada Invented' });
    const [instrument] = await house.done(house.examiner, 'instruments.list', {});
    expect(instrument).toMatchObject({ state: 'in-order', scale: { id: kept.id }, lastCheck: { reference: 'neon lamp, “neon.jdx”', outcome: expect.stringContaining('the scale read 0.80 nm off') as string } });
    expect((await house.casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows[0]).toMatchObject({ operation: 'instruments.calibrate', subject: instrumentId });
    house.pass(60);
    const later = await house.done(house.colleague, 'instruments.calibrate', { ...input(), use: 'note', passed: false });
    expect((await house.done(house.examiner, 'instruments.list', {}))[0]).toMatchObject({ state: 'failed', scale: { id: later.id, use: 'note' } });
    expect((await house.done(house.examiner, 'instruments.calibrations', { instrumentId })).map((c) => c.id)).toEqual([later.id, kept.id]);
  });
  test('later runs are corrected by it and say so; the file’s own curve stays as it is', async () => {
    const before = (await recordRun()).spectra[0]!;
    expect(before.analysis!.result.parameters.scale).toBeUndefined();
    await house.done(house.examiner, 'instruments.calibrate', { ...input(), use: 'correct', passed: true });
    const after = (await recordRun()).spectra[0]!.analysis!.result;
    expect(after.parameters.scale).toBeDefined();
    expect(after.parameters.calibrationErrorNm).toBeLessThan(0.1);
    expect(Math.abs(after.diamondRaman!.foundNm! - airFromRamanShift(532, 1332.4))).toBeLessThan(0.05);
    const peak = before.analysis!.result.peaks.find((p) => Math.abs(p.position - airFromRamanShift(532, 1332.4) - 0.8) < 0.1);
    expect(peak).toBeDefined();
  });
  test('one that is only noted says how far positions may be off', async () => {
    await house.done(house.examiner, 'instruments.calibrate', { ...input(), use: 'note', passed: true });
    const { parameters } = (await recordRun()).spectra[0]!.analysis!.result;
    expect(parameters.scale).toBeUndefined();
    expect(parameters.calibrationErrorNm).toBeCloseTo(0.8, 1);
  });
  test('the wrong lamp, a file that is none, a unit that is not said: refused with what to do, nothing kept', async () => {
    const refuse = async (change: object) => {
      const answer = await house.as(house.examiner, 'instruments.calibrate', { ...input(), use: 'correct', passed: true, ...change });
      return answer.ok ? 'kept' : `${answer.error.code}: ${answer.error.message}`;
    };
    expect(await refuse({ standard: 'argon' })).toMatch(/^refused: .*argon/);
    expect(await refuse({ standard: 'candle' })).toMatch(/not in the table/);
    expect(await refuse({ bytes: new TextEncoder().encode('no numbers here') })).toMatch(/no table of numbers/);
    expect(await refuse({ bytes: columnsOf(madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 0.5 })) })).toMatch(/state the unit|unstated/);
    expect(await refuse({ bytes: columnsOf(madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 0.5 })), xUnit: 'nm' })).toBe('kept');
    expect(await refuse({ instrumentId: 'nowhere' })).toMatch(/^not-found/);
    expect(await house.done(house.examiner, 'instruments.calibrations', { instrumentId })).toHaveLength(1);
  });
  test('a certificate’s own positions take the place of the table’s', async () => {
    const ownLines = [585.24878, 614.30627, 640.2248, 667.82766, 692.94672, 703.24128, 724.51665].map((position) => ({ position, uncertainty: 0.01 }));
    const trial = await house.done(house.examiner, 'instruments.tryCalibration', { ...input(), ownLines });
    expect(trial.standard).toBe('neon lamp, own positions');
    expect(trial.fit.lines.every((line) => ownLines.some((own) => own.position === line.reference))).toBe(true);
  });
});

describe('the laser by a known diamond', () => {
  const diamond = (laserNm: number) => jcampOf('known', simulatePhotoluminescence(simulatedStone('natural-iia', 3), emissionInstrument({ laserNm, points: 3000, spikes: 0 }), 3), 'NANOMETERS', 'PHOTOLUMINESCENCE');
  const file = () => ({ instrumentId, name: 'known.jdx', bytes: diamond(532.4), nominalNm: 532 });
  test('a trial keeps nothing; kept, it is a check, in the ledger, and what the instrument remembers', async () => {
    const trial = await house.done(house.examiner, 'instruments.tryLaser', file());
    expect(trial.laserNm).toBeCloseTo(532.4, 1);
    expect(trial.scaled).toBe(false);
    expect((await house.done(house.examiner, 'instruments.list', {}))[0]).toMatchObject({ remembers: { laserNm: 532 }, lastCheck: null });
    const kept = await house.done(house.examiner, 'instruments.calibrateLaser', { ...file(), passed: true });
    expect(kept.remembers.laserNm).toBeCloseTo(trial.laserNm, 3);
    expect(kept).toMatchObject({ state: 'in-order', scale: null, lastCheck: { by: 'Ada Invented', reference: 'Raman line of a known diamond, “known.jdx”', outcome: trial.words } });
    const [entry] = (await house.casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows;
    expect(entry).toMatchObject({ operation: 'instruments.calibrateLaser', subject: instrumentId });
  });
  test('on the scale that governs the instrument', async () => {
    await house.done(house.examiner, 'instruments.calibrate', { ...input(), use: 'correct', passed: true });
    const curve = simulatePhotoluminescence(simulatedStone('natural-iia', 3), emissionInstrument({ laserNm: 532.4, points: 3000, spikes: 0 }), 3);
    const trial = await house.done(house.examiner, 'instruments.tryLaser', { ...file(), bytes: jcampOf('known', { ...curve, x: curve.x.map(shown) }, 'NANOMETERS', 'PHOTOLUMINESCENCE') });
    expect(Math.abs(trial.laserNm - 532.4)).toBeLessThan(0.05);
    expect(trial.scaled).toBe(true);
    expect(trial.uncertaintyNm).toBeLessThan(0.06);
  });
  test('what is no diamond’s curve is refused and keeps nothing', async () => {
    const answer = await house.as(house.examiner, 'instruments.calibrateLaser', { ...file(), nominalNm: 785, passed: true });
    expect(answer.ok ? null : answer.error).toMatchObject({ code: 'refused', message: expect.stringContaining('785') as string });
    expect((await house.done(house.examiner, 'instruments.list', {}))[0]!.lastCheck).toBeNull();
  });
});
