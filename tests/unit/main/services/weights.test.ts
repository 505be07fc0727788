import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openHouse, type House } from './work-house.ts';

let house: House;
let taken: Awaited<ReturnType<House['takeIn']>>;
beforeEach(async () => {
  house = await openHouse();
  taken = await house.takeIn();
});
afterEach(() => house.close());

const measures = { cut: 'cushion' as const, length: 5.2, width: 5, depth: 3.1, depthWay: 'estimated' as const, girdle: 'thin-to-medium' as const, shapePercent: 0 };
const ring = () => ({ itemId: taken.items['B']!, stoneId: taken.stones['B-1']! });

describe('weights of mounted stones', () => {
  test('an estimate is kept with what it rests on, a newer one takes its place, and it never becomes a weighing', async () => {
    const { itemId, stoneId } = ring();
    const first = await house.done(house.examiner, 'weights.estimate', { stoneId, measures });
    expect(first).toMatchObject({ by: 'Ada Invented', measures, readingMm: 0.05, factor: 0.00815 });
    expect(first.weight).toBe(Math.round(1e4 * 0.00815 * 5.2 * 5 * 3.1));
    const second = await house.done(house.colleague, 'weights.estimate', { stoneId, measures: { ...measures, depth: 3.3 } });
    const piece = await house.done(house.examiner, 'weights.ofItem', { itemId });
    expect(piece.stones).toMatchObject([{ stoneId, label: 'B-1', estimate: { weight: second.weight, by: 'Ben Invented' } }]);
    expect(house.casebook.handle.read.get('SELECT weight FROM stone WHERE id = ?', [stoneId])).toEqual({ weight: null });
    expect(house.casebook.handle.read.get('SELECT count(*) AS n FROM weight_record')).toEqual({ n: 2 });
  });
  test('the total stands beside what was declared', async () => {
    const { itemId, stoneId } = ring();
    const { weight } = await house.done(house.examiner, 'weights.estimate', { stoneId, measures });
    const declared = await house.done(house.examiner, 'weights.declare', { itemId, weight: 2 * weight, note: 'on the invoice' });
    expect(declared).toMatchObject({ declared: { weight: 2 * weight, note: 'on the invoice' }, total: { agrees: false } });
    expect((await house.done(house.examiner, 'weights.declare', { itemId, weight: null, note: '' })).total.agrees).toBeNull();
  });
  test('a loose stone is weighed, not estimated', async () => {
    const answer = await house.as(house.examiner, 'weights.estimate', { stoneId: taken.stones['A-1']!, measures });
    expect(answer).toMatchObject({ ok: false, error: { code: 'refused', message: 'Stone A-1 is loose.' } });
    expect((await house.casebook.ledgers.verify({ at: house.now() }))?.sound).toBe(true);
  });
});
