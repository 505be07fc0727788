import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { caseDocument } from '../../../../app/bundle/case-document.ts';
import type { Input } from '../../../../app/contract/index.ts';
import type { LotOutcome } from '../../../../app/lots/lot-outcome.ts';
import type { ResultEntry } from '../../../../app/lots/lot-record.ts';
import { slowness } from '../../../fixtures/slowness.ts';
import { INTAKE, openHouse, type House } from './work-house.ts';

let house: House;
let itemId: string;
let stoneId: string;
beforeEach(async () => {
  house = await openHouse();
  const loose = { position: '', shape: 'round', measurements: '', colourClass: 'colourless' as const, weight: 240 };
  const taken = await house.takeIn({
    parcels: [{ sealNumber: 'T-1', remarks: '', items: [{ ...INTAKE.parcels[0]!.items[0]!, kind: 'lot', declared: 'small round diamonds', count: 340, grossWeight: 81_400, stones: [loose] }, INTAKE.parcels[0]!.items[1]!] }],
  });
  itemId = taken.items['A']!;
  stoneId = taken.stones['A-1']!;
});
afterEach(() => house.close());

const entry = (number: number, outcome: LotOutcome | null, was: LotOutcome | null = null): ResultEntry => ({ number, outcome, was });
const enter = (entries: ResultEntry[], person = house.examiner) => house.as(person, 'lots.enter', { itemId, source: 'keyed', entries, note: '' });
const plan: Omit<Input<'lots.plan'>, 'itemId'> = { aim: { is: 'detect', percent: 5 }, confidence: 95, sides: 'upper', drawn: 'list', seed: 11, reason: 'First look.' };
const file = (text: string): Uint8Array => new TextEncoder().encode(text);
const mapping = { separator: ';' as const, headings: false, number: 0, outcome: 1, words: {} };
const results = () => house.done(house.examiner, 'lots.results', { itemId });
const words = (answer: { ok: boolean; error?: { code: string; message: string } }): string => (answer.ok ? 'kept' : `${answer.error!.code}: ${answer.error!.message}`);

describe('the services of a lot', () => {
  test('a lot as it was taken in; what is no lot is not found', async () => {
    expect(await house.done(house.examiner, 'lots.get', { itemId })).toMatchObject({ label: 'A', count: 340, weight: 81_400, weighedIn: 'ct', tolerance: 20, counted: null, plan: null, split: null, folders: [{ stoneId, label: 'A-1', outcome: null }], book: [] });
    const ring = await house.takeIn();
    expect(words(await house.as(house.examiner, 'lots.get', { itemId: ring.items['B']! }))).toMatch(/^not-found/);
  });
  test('a plan keeps its reason, its size and the start of its list; a new one stands beside it in the book', async () => {
    const view = await house.done(house.examiner, 'lots.plan', { itemId, ...plan });
    expect(view.plan).toMatchObject({ by: 'Ada Invented', ordinal: 1, content: { lot: 340, size: 54, seed: 11, reason: 'First look.' } });
    const second = await house.done(house.colleague, 'lots.plan', { itemId, ...plan, aim: { is: 'acceptance', level: 'II', aql: 1 } });
    expect(second.plan).toMatchObject({ by: 'Ben Invented', content: { size: 50, acceptance: { accept: 1 } } });
    expect(second.book.map((line) => line.ordinal)).toEqual([2, 1]);
    expect((await house.casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows[0]).toMatchObject({ operation: 'lots.plan', subject: itemId });
    expect(await house.as(house.examiner, 'lots.plan', { itemId, ...plan, aim: { is: 'own', size: 400 } })).toMatchObject({ ok: false, error: { code: 'invalid-input', fields: { 'aim.size': 'The lot holds 340 stones; no more can be tested.' } } });
  });
  test('results stand by number, say who and when, and a correction keeps what was before', async () => {
    expect(words(await enter([entry(7, 'natural'), entry(3, 'grown-cvd')]))).toBe('kept');
    house.pass(5);
    expect(words(await enter([entry(7, 'grown-hpht', 'natural')], house.colleague))).toBe('kept');
    expect(await results()).toMatchObject([{ number: 3, outcome: 'grown-cvd', by: 'Ada Invented', before: null }, { number: 7, outcome: 'grown-hpht', by: 'Ben Invented', at: house.now(), before: 'natural' }]);
    expect(words(await enter([entry(3, null, 'grown-cvd')]))).toBe('kept');
    expect(await results()).toHaveLength(1);
  });
  test('nobody overwrites what they did not see; a set is kept whole or not at all', async () => {
    await enter([entry(7, 'natural')]);
    expect(words(await enter([entry(8, 'natural'), entry(7, 'grown-cvd')], house.colleague))).toBe('conflict: Stone 7 was meanwhile entered as “natural, consistent” by Ada Invented.');
    expect(words(await enter([entry(9, null, 'natural')]))).toBe('conflict: What stood for stone 9 was taken back meanwhile.');
    expect(await results()).toHaveLength(1);
    // Twice in one set: the second sees the first.
    expect(words(await enter([entry(10, 'natural'), entry(10, 'grown-cvd', 'natural')]))).toBe('kept');
  });
  test('a number beyond the count is refused until the lot is counted anew', async () => {
    expect(words(await enter([entry(341, 'natural')]))).toBe('refused: The lot counts 340 stones; there is no stone 341.');
    const view = await house.done(house.examiner, 'lots.count', { itemId, count: 342, sieves: [{ over: '6.5', through: '11', count: 342, weight: 81_400 }], note: 'Counted twice.' });
    expect(view).toMatchObject({ count: 342, counted: { note: 'Counted twice.', by: 'Ada Invented' } });
    expect(words(await enter([entry(341, 'natural')]))).toBe('kept');
    expect(words(await house.as(house.examiner, 'lots.count', { itemId, count: 342, sieves: [{ over: '11', through: '6.5', count: null, weight: null }], note: '' }))).toMatch(/invalid-input/);
    expect(words(await house.as(house.examiner, 'lots.count', { itemId, count: 342, sieves: [{ over: 'no plate', through: null, count: null, weight: null }], note: '' }))).toMatch(/invalid-input/);
  });
  test('an imported list is kept byte for byte with its results, and what stands is replaced only when told', async () => {
    await enter([entry(1, 'natural'), entry(2, 'natural')]);
    const list = file('1;natural\n2;cvd\n3;hpht\n4;odd\n');
    const bring = (change: object) => house.as(house.examiner, 'lots.import', { itemId, name: 'list.csv', bytes: list, mapping, replace: false, note: '', ...change });
    expect(words(await bring({}))).toBe('refused: Nobody has said what “odd” means.');
    const told = { ...mapping, words: { odd: 'undetermined' as const } };
    const kept = await bring({ mapping: told });
    expect(kept).toMatchObject({ ok: true, value: { entered: 2, same: 1, differing: 1 } });
    expect((await results()).map((one) => [one.number, one.outcome, one.source])).toEqual([[1, 'natural', 'keyed'], [2, 'natural', 'keyed'], [3, 'grown-hpht', 'imported'], [4, 'undetermined', 'imported']]);
    expect(await bring({ mapping: told, replace: true })).toMatchObject({ ok: true, value: { entered: 1, differing: 1 } });
    expect(words(await bring({ mapping: told }))).toBe('refused: This list holds nothing new for the lot.');
    const { book } = await house.done(house.examiner, 'lots.get', { itemId });
    expect(book[0]).toMatchObject({ words: '1 results from “list.csv”', sha256: kept.ok ? kept.value.sha256 : '' });
    const raw = house.casebook.handle.read.get<{ sha256: string; size: number }>('SELECT sha256, size FROM raw_record ORDER BY rowid LIMIT 1');
    expect(raw).toEqual({ sha256: kept.ok ? kept.value.sha256 : '', size: list.byteLength });
    expect(words(await bring({ bytes: file('1\n2\n') }))).toMatch(/^unreadable/);
  });
  test('a stone with a folder is tied only as its folder concludes', async () => {
    const tie = (outcome: LotOutcome) => house.as(house.examiner, 'lots.enter', { itemId, source: 'folder', entries: [{ ...entry(12, outcome), stoneId }], note: '' });
    expect(words(await tie('natural'))).toBe('refused: Stone A-1 has no conclusion yet.');
    await house.done(house.examiner, 'conclusions.conclude', { stoneId, conclusion: 'undetermined', reasons: 'Nothing was tested yet.', departure: '' });
    expect(words(await tie('natural'))).toBe('conflict: The folder of A-1 concludes otherwise.');
    expect(words(await tie('undetermined'))).toBe('kept');
    expect(await results()).toMatchObject([{ number: 12, source: 'folder', stoneId }]);
  });
  test('a split is kept with its parts', async () => {
    const view = await house.done(house.examiner, 'lots.split', { itemId, parts: [{ sort: 'passing', name: '', count: 338, weight: 80_900 }, { sort: 'referred', name: 'to the spectrometer', count: 2, weight: 500 }], note: '' });
    expect(view.split).toMatchObject({ by: 'Ada Invented', parts: [{ sort: 'passing', count: 338 }, { sort: 'referred', weight: 500 }] });
  });
  test('what is in the book can’t be changed, and the casebook verifies', async () => {
    await enter([entry(7, 'natural')]);
    await house.done(house.examiner, 'lots.plan', { itemId, ...plan });
    await expect(house.casebook.handle.transact((tx) => { tx.run(`UPDATE lot_record SET content = '{}'`); })).rejects.toThrow(/only grows/);
    await expect(house.casebook.handle.transact((tx) => { tx.run('DELETE FROM lot_record'); })).rejects.toThrow(/only grows/);
    expect((await house.casebook.ledgers.verify({ at: house.now() }))?.sound).toBe(true);
  });
  test('the bundle of the case holds the book, what stands, the statement and the list as it came', async () => {
    await house.done(house.examiner, 'lots.plan', { itemId, ...plan });
    const list = file('1;natural\n2;cvd\n');
    const { sha256 } = await house.done(house.examiner, 'lots.import', { itemId, name: 'list.csv', bytes: list, mapping, replace: false, note: '' });
    const { caseId } = await house.done(house.examiner, 'lots.get', { itemId });
    const files = unzipSync((await house.done(house.examiner, 'cases.bundle', { caseId })).zip);
    const { lots } = caseDocument.parse(JSON.parse(new TextDecoder().decode(files['cases/C-2026-0001/case.json'])));
    expect(lots).toMatchObject([{ item: 'A', book: [{ ordinal: 1, content: { kind: 'plan' } }, { ordinal: 2, content: { kind: 'results', file: { sha256 } } }], results: [{ number: 1 }, { number: 2 }] }]);
    expect(lots![0]!.statement[0]).toContain('Tested: 2 of 340 stones.');
    expect(files[`cases/C-2026-0001/raw/list-${sha256.slice(0, 8)}-list.csv`]).toEqual(list);
  });
  test('a report is not issued while a lot’s count and results contradict each other', async () => {
    await house.done(house.examiner, 'lots.plan', { itemId, ...plan });
    await enter([entry(340, 'natural')]);
    const { caseId } = await house.done(house.examiner, 'lots.get', { itemId });
    const missing = async () => (await house.done(house.examiner, 'reports.prepare', { caseId })).missing.filter((sentence) => sentence.startsWith('Lot'));
    expect(await missing()).toEqual([]);
    await house.done(house.examiner, 'lots.count', { itemId, count: 339, sieves: [], note: '' });
    expect(await missing()).toEqual(['Lot A has results for numbers beyond its 339 stones: count it again, or take them back.']);
    await enter([entry(340, null, 'natural'), entry(1, 'natural')]);
    expect(await missing()).toEqual(['Lot A was counted anew after its plan: make the plan for 339 stones.']);
  });
  test('10,000 results come in, and one more is entered, without a long wait', async () => {
    await house.done(house.examiner, 'lots.count', { itemId, count: 10_000, sieves: [], note: '' });
    const list = file(Array.from({ length: 9999 }, (_, i) => `${i + 1};natural`).join('\n'));
    expect(await house.done(house.examiner, 'lots.import', { itemId, name: 'long.csv', bytes: list, mapping, replace: false, note: '' })).toMatchObject({ entered: 9999 });
    const from = performance.now();
    await enter([entry(10_000, 'grown-cvd')]);
    expect(await results()).toHaveLength(10_000);
    expect(performance.now() - from).toBeLessThan(1000 * slowness());
  });
});
