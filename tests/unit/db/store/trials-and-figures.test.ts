import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ConclusionId } from '../../../../app/domain/conclusion.ts';
import { createInstrumentsStore } from '../../../../db/store/instruments.ts';
import { checksCsv, ratesCsv } from '../../../../app/history/figures-csv.ts';
import { appendAudit } from '../../../../db/ledger/append-audit.ts';
import { intake, looseItem, madeCasebook, type MadeCasebook } from '../made-casebook.ts';

const YEAR = { from: '2026-01-01', to: '2026-12-31' };
let made: MadeCasebook;
let stones: readonly { id: string; caseId: string }[];
const change = () => ({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'test' });

/** A conclusion and, unless `second` is undefined, the second person's answer to it. */
type Answered = { at: string; first: ConclusionId; agrees?: boolean; second?: ConclusionId | null; readFirst?: boolean | null };

async function answer(stone: number, ordinal: number, { at, first, agrees, second = null, readFirst = null }: Answered): Promise<void> {
  const { id, caseId } = stones[stone]!;
  await made.casebook.handle.transact((tx) => {
    tx.run(`INSERT INTO conclusion (id, case_id, stone_id, ordinal, conclusion, reasons, proposal, rules, finding_ids, departure, person_id, at) VALUES (?, ?, ?, ?, ?, '', '{}', '', '[]', '', ?, ?)`, [`c${stone}-${ordinal}`, caseId, id, ordinal, first, made.personId, at]);
    if (agrees !== undefined) tx.run('INSERT INTO confirmation VALUES (?, ?, ?, ?, ?, ?, ?, ?)', [`f${stone}-${ordinal}`, `c${stone}-${ordinal}`, made.personId, agrees ? 1 : 0, '', at, second, readFirst === null ? null : readFirst ? 1 : 0]);
    appendAudit(tx, change(), { subject: 'test', caseId: null, content: {} });
  });
}

beforeAll(async () => {
  made = await madeCasebook();
  for (let i = 0; i < 6; i++) await made.casebook.cases.takeIn(change(), intake([looseItem()]));
  const { rows } = await made.casebook.stones.list({ text: '', limit: 10, offset: 0 });
  stones = rows.toSorted((a, b) => a.caseNumber.localeCompare(b.caseNumber)).map(({ id, caseId }) => ({ id, caseId }));
  // Winter time in Berlin: 23:30 UTC on 31 March is already April in summer time.
  await answer(0, 1, { at: '2026-03-31T21:59:00.000Z', first: 'natural', agrees: true, second: 'natural', readFirst: true });
  await answer(1, 1, { at: '2026-03-31T22:00:00.000Z', first: 'grown-cvd', agrees: true, second: 'grown-cvd', readFirst: true });
  await answer(2, 1, { at: '2026-04-02T10:00:00.000Z', first: 'natural', agrees: false, second: 'undetermined', readFirst: true });
  await answer(2, 2, { at: '2026-04-03T10:00:00.000Z', first: 'undetermined', agrees: true });
  await answer(3, 1, { at: '2026-04-04T10:00:00.000Z', first: 'natural', agrees: false });
  await answer(4, 1, { at: '2026-04-05T10:00:00.000Z', first: 'grown-hpht', agrees: true });
  await answer(5, 1, { at: '2026-04-06T10:00:00.000Z', first: 'natural' });
});
afterAll(() => { made.casebook.close(); });

describe('figures over time', () => {
  test('a day ends at midnight of the laboratory, and only what stands and was confirmed is settled', async () => {
    const { steps, whole } = await made.casebook.figures.overTime({ ...YEAR, grain: 'quarter' });
    expect(steps.map((step) => [step.label, step.settled])).toEqual([['2026-Q1', 1], ['2026-Q2', 3], ['2026-Q3', 0], ['2026-Q4', 0]]);
    expect(whole).toMatchObject({ received: 6, settled: 4, reported: 0, open: 6, turnaround: null, sentFurther: { count: 1, of: 4 } });
  });

  test('kappa comes from readings that were stated first; confirmation stands apart', async () => {
    const { readFirst, seen, unstated } = await made.casebook.figures.agreement(YEAR);
    expect(readFirst).toMatchObject({ outcomes: ['natural', 'grown-cvd', 'undetermined'], counts: [[1, 0, 1], [0, 1, 0], [0, 0, 0]], n: 3, observed: { count: 2, of: 3 } });
    expect(readFirst.kappa).toBeCloseTo((2 / 3 - 1 / 3) / (1 - 1 / 3), 12); // by hand: chance 2/3·1/3 + 1/3·1/3 + 0 = 1/3
    expect(seen).toMatchObject({ n: 2, observed: { count: 2, of: 2 } });
    expect(unstated).toBe(1);
  });
});

describe('known samples', () => {
  const add = (label: string, truth: 'natural' | 'grown-cvd') => made.casebook.trials.addSample(change(), { label, truth, basis: 'invented' });

  test('a stone of a case is linked once it is settled, with what the records say', async () => {
    const sample = await add('KS-1', 'grown-cvd');
    if (!sample.ok) throw new Error(sample.error);
    const link = (caseNumber: string, stoneLabel = 'A-1') => made.casebook.trials.addFromStone(change(), { sampleId: sample.value.id, caseNumber, stoneLabel, blind: false, remark: '', instrumentIds: [] });
    expect(await made.casebook.trials.addFromStone(change(), { sampleId: sample.value.id, caseNumber: 'C-2026-0001', stoneLabel: 'A-1', blind: true, remark: '', instrumentIds: [] })).toEqual({ ok: false, error: 'not-blind' });
    expect(await link('C-2026-0006')).toEqual({ ok: false, error: 'not-confirmed' });
    expect(await link('C-2026-0004')).toEqual({ ok: false, error: 'not-confirmed' });
    expect(await link('C-2026-0099')).toEqual({ ok: false, error: 'no-stone' });
    expect(await link('c-2026-0001', 'a-1')).toMatchObject({ ok: true, value: { sample: 'KS-1', truth: 'grown-cvd', outcome: 'natural', examiner: 'Ada Invented', examinedAt: '2026-03-31T21:59:00.000Z', stone: { caseNumber: 'C-2026-0001', label: 'A-1' } } });
    expect(await link('C-2026-0001')).toEqual({ ok: false, error: 'already-linked' });
    const { all } = await made.casebook.trials.list(YEAR);
    expect(all.falseNatural).toMatchObject({ count: 1, of: 1 });
    const { whole, knownSamples } = await made.casebook.figures.overTime({ ...YEAR, grain: 'year' });
    expect(whole).toMatchObject({ settled: 3, sentFurther: { count: 1, of: 3 } }); // the sample is no client's stone
    expect(knownSamples).toBe(1);
  });

  test('names are taken once; a withdrawn one keeps its trials and takes no more', async () => {
    expect(await add('ks-1', 'natural')).toEqual({ ok: false, error: 'label-taken' });
    const sample = await add('KS-2', 'natural');
    if (!sample.ok) throw new Error(sample.error);
    const colleague = await made.casebook.people.save(change(), { id: null, name: 'Ben Invented', initials: 'BI', roles: ['examiner'], active: true });
    if (!colleague.ok) throw new Error(colleague.error.message);
    const byHand = (examinedOn: string, blind = true) => made.casebook.trials.addByHand(change(), { sampleId: sample.value.id, outcome: 'natural', examinerId: blind ? colleague.value.id : made.personId, examinedOn, blind, remark: '', instrumentIds: [] });
    expect(await byHand('2026-03-01')).toMatchObject({ ok: true, value: { stone: null, blind: true } });
    expect(await byHand('2026-03-02', false)).toMatchObject({ ok: true });
    expect(await byHand('2027-03-01')).toEqual({ ok: false, error: 'in-future' });
    expect(await made.casebook.trials.withdrawSample(change(), sample.value.id, { reason: 'lost', originWrong: false })).toMatchObject({ ok: true, value: { withdrawn: { reason: 'lost', by: 'Ada Invented' }, trials: 2 } });
    expect(await byHand('2026-03-01')).toEqual({ ok: false, error: 'withdrawn' });
    expect(await made.casebook.trials.withdrawSample(change(), sample.value.id, { reason: 'again', originWrong: true })).toEqual({ ok: false, error: 'withdrawn' });
    const { blind, all, samples } = await made.casebook.trials.list(YEAR);
    expect([blind.natural.all, all.natural.all]).toEqual([1, 2]);
    expect(samples.map(({ label, trials }) => [label, trials])).toEqual([['KS-1', 1], ['KS-2', 2]]);
    expect((await made.casebook.trials.list({ from: '2026-03-01', to: '2026-03-01' })).trials).toHaveLength(1);
  });

  test('a trial taken back stays in the list and counts nowhere, and its stone may be linked again', async () => {
    const before = await made.casebook.trials.list(YEAR);
    const linked = before.trials.find((trial) => trial.stone?.caseNumber === 'C-2026-0001')!;
    expect(await made.casebook.trials.withdraw(change(), linked.id, 'the wrong sample')).toMatchObject({ ok: true, value: { counts: false, withdrawn: { reason: 'the wrong sample', by: 'Ada Invented' } } });
    expect(await made.casebook.trials.withdraw(change(), linked.id, 'again')).toEqual({ ok: false, error: 'taken-back' });
    expect(await made.casebook.trials.withdraw(change(), 'nowhere', 'again')).toEqual({ ok: false, error: 'no-trial' });
    const { trials, all, samples } = await made.casebook.trials.list(YEAR);
    expect([trials.length, all.falseNatural.of, samples.find(({ label }) => label === 'KS-1')!.trials]).toEqual([before.trials.length, 0, 0]);
    expect(await made.casebook.figures.overTime({ ...YEAR, grain: 'year' })).toMatchObject({ whole: { settled: 4 }, knownSamples: 0 });
    const right = await add('KS-3', 'natural');
    if (!right.ok) throw new Error(right.error);
    const instruments = createInstrumentsStore(made.casebook.handle, () => 'pl-2');
    await instruments.save(change(), { id: null, name: 'Bench spectrometer', methods: ['photoluminescence'], serial: '', place: '', remembers: {}, checkEveryDays: 30, active: true });
    const link = (instrumentIds: string[]) => made.casebook.trials.addFromStone(change(), { sampleId: right.value.id, caseNumber: 'C-2026-0001', stoneLabel: 'A-1', blind: false, remark: '', instrumentIds });
    expect(await link(['nowhere'])).toEqual({ ok: false, error: 'no-instrument' });
    expect(await link(['pl-2'])).toMatchObject({ ok: true, value: { instruments: ['Bench spectrometer'], counts: true } });
    expect(await link([])).toEqual({ ok: false, error: 'already-linked' });
  });

  test('a sample that is not what it was said to be takes its trials out of the rates, and one that is lost does not', async () => {
    const of = async () => (await made.casebook.trials.list(YEAR)).all.natural.all;
    expect(await of()).toBe(3);
    const right = (await made.casebook.trials.list(YEAR)).samples.find(({ label }) => label === 'KS-3')!;
    expect(await made.casebook.trials.withdrawSample(change(), right.id, { reason: 'its paper is another stone’s', originWrong: true })).toMatchObject({ ok: true, value: { withdrawn: { originWrong: true } } });
    expect(await of()).toBe(2);
    expect((await made.casebook.trials.list(YEAR)).trials.filter((trial) => trial.sample === 'KS-3')).toMatchObject([{ counts: false, withdrawn: null }]);
    expect(await made.casebook.figures.overTime({ ...YEAR, grain: 'year' })).toMatchObject({ knownSamples: 1 }); // it is no client's stone all the same
  });

  test('the rates go out with their limits and with what is assumed', async () => {
    const outcome = await made.casebook.trials.list(YEAR);
    expect(outcome.assumedNotNatural).toBe(2);
    const [head, ...rows] = ratesCsv(outcome, outcome.assumedNotNatural).trim().split('\r\n');
    expect(head).toBe('trials,rate,means,count,of,share,at least (95 %),at most (95 %),"at most (95 %, one-sided)",assumed share that is not natural');
    // 0 of 2: exact limits 1 − 0.025^(1/2) and, one-sided, 1 − 0.05^(1/2), by hand.
    expect(rows.find((row) => row.startsWith('all trials,False alarm'))).toMatch(/,0,2,0,0,0\.841886,0\.776393,$/);
    expect(rows.find((row) => row.startsWith('all trials,Missed among passed'))).toMatch(/,,,,,,,0\.02$/); // nothing that is not natural was tried: it says nothing
    expect(rows).toHaveLength(14);
  });

  test('what is written about them is vouched for', async () => {
    expect(await made.casebook.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' })).toMatchObject({ parts: expect.arrayContaining([expect.objectContaining({ part: 'audit ledger', sound: true })]) as unknown });
    const verified = await made.casebook.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' });
    expect(verified?.parts.find((part) => part.part === 'guards')?.sound).toBe(true);
  });
});

describe('checks with a number', () => {
  test('are series of one quantity of one instrument; others are counted', async () => {
    const instruments = createInstrumentsStore(made.casebook.handle, made.deps.newId);
    const saved = await instruments.save(change(), { id: null, name: 'Bench', methods: [], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    const check = (value: number | null, quantity = 'mercury 546') => instruments.recordCheck(change(), {
      instrumentId: saved!.id, passed: true, reference: 'lamp', outcome: 'seen', measured: value === null ? null : { quantity, unit: 'nm', value, expected: 546.075, tolerance: 0.1 }, afterService: false,
    });
    const values = [546.07, 546.08, 546.07, 546.09, 546.08, 546.07, 546.08, 546.07, 546.25];
    for (const value of values) await check(value);
    await check(10, 'counts');
    await check(null);
    const { series, withoutNumber } = await made.casebook.figures.checks(YEAR);
    expect(withoutNumber).toBe(1);
    expect(series.map(({ quantity, points }) => [quantity, points.length])).toEqual([['counts', 1], ['mercury 546', 9]]);
    expect(series[0]!.bases).toMatchObject([{ limits: null, service: null, checks: 1 }]);
    expect(series[1]).toMatchObject({ instrument: 'Bench', unit: 'nm', bases: [{ service: null, limits: { from: 9 }, checks: 9 }] });
    expect(series[1]!.points.map((point) => point.value)).toEqual(values);
    expect(series[1]!.points.at(-1)!.signals).toEqual(['beyond-3']);
    expect((await made.casebook.figures.checks({ from: '2025-01-01', to: '2025-12-31' })).series).toEqual([]);
  });

  test('a period that begins after a drift does not make the drift its own measure', async () => {
    const instruments = createInstrumentsStore(made.casebook.handle, made.deps.newId);
    const saved = await instruments.save(change(), { id: null, name: 'Drifting', methods: [], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    const wobble = [0, 0.01, -0.01, 0.005, -0.005, 0.012, -0.008, 0.003, -0.002, 0.006, 0, 0.01, -0.01, 0.005, -0.005, 0.012, -0.008, 0.003, -0.002, 0.006];
    const record = (at: string, value: number) => instruments.recordCheck({ ...change(), at }, {
      instrumentId: saved!.id, passed: true, reference: 'lamp', outcome: 'seen', measured: { quantity: 'mercury 546', unit: 'nm', value, expected: null, tolerance: null }, afterService: false,
    });
    for (const [i, off] of wobble.entries()) await record(`2024-01-${String(i + 1).padStart(2, '0')}T10:00:00.000Z`, 546.075 + off);
    for (const [i, off] of wobble.entries()) await record(`2024-03-${String(i + 1).padStart(2, '0')}T10:00:00.000Z`, 546.125 + off);
    const [shown] = (await made.casebook.figures.checks({ from: '2024-03-01', to: '2024-03-31' })).series;
    expect(shown!.points).toHaveLength(20);
    expect(shown!.bases).toHaveLength(1);
    expect(shown!.bases[0]!.checks).toBe(40);
    expect(shown!.bases[0]!.limits!.mean).toBeCloseTo(546.0761, 4);
    expect(shown!.points.every(({ signals }) => signals.length > 0)).toBe(true);
  });

  test('after a service limits begin anew, and what each check should have been stands with it', async () => {
    const instruments = createInstrumentsStore(made.casebook.handle, made.deps.newId);
    const saved = await instruments.save(change(), { id: null, name: 'Serviced', methods: [], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    const record = (day: number, value: number | null, expected: number, afterService = false) => instruments.recordCheck({ ...change(), at: `2022-05-${String(day).padStart(2, '0')}T10:00:00.000Z` }, {
      instrumentId: saved!.id, passed: true, reference: 'lamp', outcome: afterService ? 'grating replaced' : 'seen', measured: value === null ? null : { quantity: 'mercury 546', unit: 'nm', value, expected, tolerance: 0.1 }, afterService,
    });
    const wobble = [0.01, -0.01, 0.02, -0.02, 0.01, -0.01, 0.02, -0.02];
    for (const [i, off] of wobble.entries()) await record(i + 1, 546.075 + off, 546.075);
    await record(9, null, 0, true); // the service is told by a check without a number: it breaks the course all the same
    for (const [i, off] of wobble.entries()) await record(i + 10, 546.3 + off, 546.31);
    const [shown] = (await made.casebook.figures.checks({ from: '2022-05-01', to: '2022-05-31' })).series;
    expect(shown!.bases).toMatchObject([{ service: null, checks: 8 }, { at: '2022-05-10T10:00:00.000Z', service: { at: '2022-05-09T10:00:00.000Z', words: 'grating replaced' }, checks: 8 }]);
    expect(shown!.bases.map(({ limits }) => limits!.mean.toFixed(4))).toEqual(['546.0750', '546.3000']);
    expect(shown!.points.flatMap(({ signals }) => signals)).toEqual([]);
    expect(shown!.points.map(({ expected, base }) => [expected, base])).toEqual([...wobble.map(() => [546.075, 0]), ...wobble.map(() => [546.31, 1])]);
    // A period that begins after the service still knows the base it lies in.
    const [later] = (await made.casebook.figures.checks({ from: '2022-05-12', to: '2022-05-31' })).series;
    expect([later!.points[0]!.base, later!.bases.length]).toEqual([1, 2]);
    expect(checksCsv([later!]).split('\r\n')[1]).toContain(',546.31,0.1,yes,2,2022-05-09T10:00:00.000Z,');
  });

  test('the laser’s own wavelength is drawn, not that of the diamond line it was found by', async () => {
    const instruments = createInstrumentsStore(made.casebook.handle, made.deps.newId);
    const saved = await instruments.save(change(), { id: null, name: 'Raman', methods: [], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    await instruments.keepLaser({ ...change(), at: '2023-05-01T10:00:00.000Z' }, {
      instrumentId: saved!.id, passed: true, reference: 'diamond', outcome: 'seen', laserNm: 532.1, uncertaintyNm: 0.01, foundNm: 572.7, nominalNm: 532, fileName: 'd.csv', fileSha256: 'a'.repeat(64),
    });
    const { series } = await made.casebook.figures.checks({ from: '2023-01-01', to: '2023-12-31' });
    expect(series[0]).toMatchObject({ quantity: 'wavelength of the laser', points: [{ value: 532.1, expected: 532 }] });
  });
});
