import { describe, expect, test } from 'vitest';
import { comparePair, type PairInput } from '../../../../app/images/compare-pair.ts';
import { placer } from '../../../../app/images/placement.ts';
import { photographPiece, type SimulatedView } from '../../../../app/images/simulate/photograph-piece.ts';
import { simulatedPiece, type PieceOptions, type SimulatedPiece } from '../../../../app/images/simulate/simulated-piece.ts';

const SHIFT = { dx: 13.37, dy: -7.81, degrees: 1.2 };
const marksOf = (piece: SimulatedPiece): PairInput['marks'] => piece.stones.map((stone, i) => ({
  id: `m${i + 1}`, number: i + 1, stoneId: null, x: (stone.x + 0.5) / piece.width, y: (stone.y + 0.5) / piece.height, radius: stone.radius / piece.width,
}));

function pairOf(options: Partial<PieceOptions>, views: { long?: Partial<SimulatedView>; short?: Partial<SimulatedView> } = {}) {
  const piece = simulatedPiece({ width: 1200, height: 900, count: 60, seed: 21, ...options });
  const longWave = photographPiece(piece, { light: 'long-wave', seed: 1, ...views.long });
  const shortWave = photographPiece(piece, { light: 'short-wave', seed: 2, shift: SHIFT, stops: 0.5, ...views.short });
  return { piece, input: { longWave, shortWave, marks: marksOf(piece), stops: views.short?.stops ?? 0.5, stopsFrom: 'stated' } satisfies PairInput };
}

const total = (light: readonly number[]): number => light.reduce((sum, value) => sum + value, 0);

describe('comparePair on a simulated piece of sixty stones', () => {
  const { piece, input } = pairOf({ odd: { 7: 1.2, 31: 1.3 } });
  const compared = comparePair(input);
  if (!compared.ok) throw new Error(compared.error.code);
  const { alignment, stones, notes } = compared.value;

  test('lays the photographs on one another within a fifth of a point at every stone', () => {
    const [found, truth] = [placer(alignment.placement, 1200, 900), placer({ ...SHIFT, scale: 1 }, 1200, 900)];
    for (const { x, y } of piece.stones) {
      const [[fx, fy], [tx, ty]] = [found(x, y), truth(x, y)];
      expect(Math.hypot(fx - tx, fy - ty)).toBeLessThan(0.2);
    }
  });

  test('finds the ratio of every stone within six hundredths of its logarithm', () => {
    stones.forEach((stone, i) => {
      const truth = Math.log(total(piece.stones[i]!.shortWave) / total(piece.stones[i]!.longWave));
      expect(Math.abs(stone.logRatio! - truth), `stone ${i + 1}`).toBeLessThan(0.06);
      expect(stone.bound).toBe('none');
    });
  });

  test('names the two stones that are unlike the rest, and no other', () => {
    expect(stones.filter((stone) => stone.standsOut).map((stone) => stone.number)).toEqual([8, 32]);
  });

  test('says the colour of the glow', () => {
    expect(stones[0]!.longWave.colour?.word).toBe('blue');
    expect(['orange', 'yellow']).toContain(stones[31]!.shortWave.colour?.word);
    expect(notes).toEqual([]);
  });

  test('gives the same numbers again', () => {
    expect(comparePair(input)).toEqual(compared);
  });
});

describe('comparePair on difficult photographs', () => {
  test('a compensated exposure changes no ratio', () => {
    const [plain, longer] = [0, 1.5].map((stops) => comparePair(pairOf({ count: 20 }, { short: { stops } }).input));
    if (!plain!.ok || !longer!.ok) throw new Error('a pair does not fit');
    plain!.value.stones.forEach((stone, i) => expect(longer!.ok && longer!.value.stones[i]!.logRatio).toBeCloseTo(stone.logRatio!, 1));
  });

  test('clipped stones get a bound and a sentence', () => {
    const compared = comparePair(pairOf({ count: 20 }, { long: { stops: 3 } }).input);
    if (!compared.ok) throw new Error(compared.error.code);
    const clipped = compared.value.stones.filter((stone) => stone.longWave.state === 'clipped');
    expect(clipped.length).toBeGreaterThan(0);
    expect(clipped.every((stone) => stone.bound === 'at-most')).toBe(true);
    expect(compared.value.notes[0]).toMatch(/^Overexposed: /);
  });

  test('stones that glow under neither lamp have no ratio', () => {
    const { piece, input } = pairOf({ count: 20 });
    const stones = piece.stones.map((stone, i) => (i === 4 ? { ...stone, longWave: [0, 0, 0] as const, shortWave: [0, 0, 0] as const } : stone));
    const dark = { ...piece, stones };
    const compared = comparePair({ ...input, longWave: photographPiece(dark, { light: 'long-wave' }), shortWave: photographPiece(dark, { light: 'short-wave', shift: SHIFT, stops: 0.5, seed: 2 }) });
    expect(compared).toMatchObject({ ok: true });
    expect(compared.ok && compared.value.stones[4]).toMatchObject({ logRatio: null, score: null, standsOut: false, longWave: { state: 'dark', colour: null } });
  });

  test('too few stones have nothing to stand out from', () => {
    const compared = comparePair(pairOf({ count: 4, odd: { 1: 3 } }).input);
    expect(compared.ok && compared.value.stones.some((stone) => stone.standsOut)).toBe(false);
    expect(compared.ok && compared.value.notes.at(-1)).toMatch(/^Fewer than 5 stones/);
  });
});

describe('comparePair refuses', () => {
  const { input } = pairOf({ count: 20 });

  test('photographs of different size', () => {
    const other = photographPiece(simulatedPiece({ width: 1000, height: 900, count: 20, seed: 21 }), { light: 'short-wave' });
    expect(comparePair({ ...input, shortWave: other })).toEqual({ ok: false, error: { code: 'sizes-differ' } });
  });

  test('a black frame, and says which', () => {
    const black = { ...input.shortWave, data: new Uint8Array(input.shortWave.data.length) };
    expect(comparePair({ ...input, shortWave: black })).toEqual({ ok: false, error: { code: 'black-frame', lamp: 'short-wave' } });
  });

  test('two pieces that are not the same', () => {
    const other = photographPiece(simulatedPiece({ width: 1200, height: 900, count: 60, seed: 4 }), { light: 'short-wave' });
    expect(comparePair({ ...input, shortWave: other })).toMatchObject({ ok: false, error: { code: 'does-not-fit' } });
  });

  test('no marks', () => {
    expect(comparePair({ ...input, marks: [] })).toEqual({ ok: false, error: { code: 'no-marks' } });
  });
});
