import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ConclusionId } from '../../../../app/domain/conclusion.ts';
import { createInstrumentsStore } from '../../../../db/store/instruments.ts';
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
    const link = (caseNumber: string, stoneLabel = 'A-1') => made.casebook.trials.addFromStone(change(), { sampleId: sample.value.id, caseNumber, stoneLabel, blind: false, remark: '' });
    expect(await made.casebook.trials.addFromStone(change(), { sampleId: sample.value.id, caseNumber: 'C-2026-0001', stoneLabel: 'A-1', blind: true, remark: '' })).toEqual({ ok: false, error: 'not-blind' });
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
    const byHand = (examinedOn: string, blind = true) => made.casebook.trials.addByHand(change(), { sampleId: sample.value.id, outcome: 'natural', examinerId: blind ? colleague.value.id : made.personId, examinedOn, blind, remark: '' });
    expect(await byHand('2026-03-01')).toMatchObject({ ok: true, value: { stone: null, blind: true } });
    expect(await byHand('2026-03-02', false)).toMatchObject({ ok: true });
    expect(await byHand('2027-03-01')).toEqual({ ok: false, error: 'in-future' });
    expect(await made.casebook.trials.withdrawSample(change(), sample.value.id, 'lost')).toMatchObject({ ok: true, value: { withdrawn: { reason: 'lost', by: 'Ada Invented' }, trials: 2 } });
    expect(await byHand('2026-03-01')).toEqual({ ok: false, error: 'withdrawn' });
    expect(await made.casebook.trials.withdrawSample(change(), sample.value.id, 'again')).toEqual({ ok: false, error: 'withdrawn' });
    const { blind, all, samples } = await made.casebook.trials.list(YEAR);
    expect([blind.natural.all, all.natural.all]).toEqual([1, 2]);
    expect(samples.map(({ label, trials }) => [label, trials])).toEqual([['KS-1', 1], ['KS-2', 2]]);
    expect((await made.casebook.trials.list({ from: '2026-03-01', to: '2026-03-01' })).trials).toHaveLength(1);
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
      instrumentId: saved!.id, passed: true, reference: 'lamp', outcome: 'seen', measured: value === null ? null : { quantity, unit: 'nm', value, expected: 546.075, tolerance: 0.1 },
    });
    const values = [546.07, 546.08, 546.07, 546.09, 546.08, 546.07, 546.08, 546.07, 546.25];
    for (const value of values) await check(value);
    await check(10, 'counts');
    await check(null);
    const { series, withoutNumber } = await made.casebook.figures.checks(YEAR);
    expect(withoutNumber).toBe(1);
    expect(series.map(({ quantity, points }) => [quantity, points.length])).toEqual([['counts', 1], ['mercury 546', 9]]);
    expect(series[0]!.limits).toBeNull();
    expect(series[1]).toMatchObject({ instrument: 'Bench', unit: 'nm', expected: 546.075, tolerance: 0.1, limits: { from: 9 } });
    expect(series[1]!.points.map((point) => point.value)).toEqual(values);
    expect(series[1]!.points.at(-1)!.signals).toEqual(['beyond-3']);
    expect((await made.casebook.figures.checks({ from: '2025-01-01', to: '2025-12-31' })).series).toEqual([]);
  });

  test('a period that begins after a drift does not make the drift its own measure', async () => {
    const instruments = createInstrumentsStore(made.casebook.handle, made.deps.newId);
    const saved = await instruments.save(change(), { id: null, name: 'Drifting', methods: [], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    const wobble = [0, 0.01, -0.01, 0.005, -0.005, 0.012, -0.008, 0.003, -0.002, 0.006, 0, 0.01, -0.01, 0.005, -0.005, 0.012, -0.008, 0.003, -0.002, 0.006];
    const record = (at: string, value: number) => instruments.recordCheck({ ...change(), at }, {
      instrumentId: saved!.id, passed: true, reference: 'lamp', outcome: 'seen', measured: { quantity: 'mercury 546', unit: 'nm', value, expected: null, tolerance: null },
    });
    for (const [i, off] of wobble.entries()) await record(`2024-01-${String(i + 1).padStart(2, '0')}T10:00:00.000Z`, 546.075 + off);
    for (const [i, off] of wobble.entries()) await record(`2024-03-${String(i + 1).padStart(2, '0')}T10:00:00.000Z`, 546.125 + off);
    const [shown] = (await made.casebook.figures.checks({ from: '2024-03-01', to: '2024-03-31' })).series;
    expect(shown!.points).toHaveLength(20);
    expect(shown!.upToEnd).toBe(40);
    expect(shown!.limits!.mean).toBeCloseTo(546.0761, 4);
    expect(shown!.points.every(({ signals }) => signals.length > 0)).toBe(true);
  });

  test('the laser’s own wavelength is drawn, not that of the diamond line it was found by', async () => {
    const instruments = createInstrumentsStore(made.casebook.handle, made.deps.newId);
    const saved = await instruments.save(change(), { id: null, name: 'Raman', methods: [], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
    await instruments.keepLaser({ ...change(), at: '2023-05-01T10:00:00.000Z' }, {
      instrumentId: saved!.id, passed: true, reference: 'diamond', outcome: 'seen', laserNm: 532.1, uncertaintyNm: 0.01, foundNm: 572.7, nominalNm: 532, fileName: 'd.csv', fileSha256: 'a'.repeat(64),
    });
    const { series } = await made.casebook.figures.checks({ from: '2023-01-01', to: '2023-12-31' });
    expect(series[0]).toMatchObject({ quantity: 'wavelength of the laser', expected: 532, points: [{ value: 532.1 }] });
  });
});
