import { describe, expect, test } from 'vitest';
import { brightnessGrid } from '../../../../app/images/brightness-grid.ts';
import { photographPiece, type SimulatedView } from '../../../../app/images/simulate/photograph-piece.ts';
import { simulatedPiece, type SimulatedPiece } from '../../../../app/images/simulate/simulated-piece.ts';
import { OUTLINE_DEFAULTS, suggestOutlines } from '../../../../app/images/suggest-outlines.ts';

const outlinesOf = (piece: SimulatedPiece, view: SimulatedView) => suggestOutlines(brightnessGrid(photographPiece(piece, view), OUTLINE_DEFAULTS.longSide));

/** Stones whose outline lies on them: middle within a third of the radius, radius within a third. */
function found(piece: SimulatedPiece, outlines: ReturnType<typeof suggestOutlines>): number {
  return piece.stones.filter((stone) => outlines.some((o) => Math.hypot(o.x * piece.width - 0.5 - stone.x, o.y * piece.height - 0.5 - stone.y) < 0.33 * stone.radius
    && Math.abs(o.radius * piece.width / stone.radius - 1) < 0.33)).length;
}

describe('suggestOutlines', () => {
  test.each(['long-wave', 'white'] as const)('finds all sixty stones of a piece under %s light and nothing else', (light) => {
    const piece = simulatedPiece({ width: 1400, height: 1000, count: 60, seed: 11 });
    const outlines = outlinesOf(piece, { light });
    expect(found(piece, outlines)).toBe(60);
    expect(outlines).toHaveLength(60);
  });

  test('finds faint stones beside bright ones', () => {
    const piece = simulatedPiece({ width: 1000, height: 800, count: 8, seed: 3 });
    const stones = piece.stones.map((stone, i) => (i % 2 === 0 ? stone : { ...stone, longWave: [0.02, 0.03, 0.05] as const }));
    expect(found({ ...piece, stones }, outlinesOf({ ...piece, stones }, { light: 'long-wave' }))).toBe(8);
  });

  test('parts stones that touch', () => {
    const stone = { radius: 60, longWave: [0.3, 0.3, 0.3], shortWave: [0.1, 0.1, 0.1] } as const;
    const piece = { width: 800, height: 400, seed: 2, stones: [{ ...stone, x: 200, y: 200 }, { ...stone, x: 318, y: 200 }, { ...stone, x: 436, y: 200 }] };
    const outlines = outlinesOf(piece, { light: 'long-wave' });
    expect(outlines).toHaveLength(3);
    expect(found(piece, outlines)).toBe(3);
  });

  test('suggests nothing on an even or a black photograph', () => {
    for (const level of [0, 0.3]) {
      expect(suggestOutlines({ width: 200, height: 100, data: new Float32Array(20_000).fill(level) })).toEqual([]);
    }
  });

  test('gives the same outlines for the same photograph', () => {
    const piece = simulatedPiece({ width: 600, height: 400, count: 12, seed: 5 });
    expect(outlinesOf(piece, { light: 'short-wave' })).toEqual(outlinesOf(piece, { light: 'short-wave' }));
  });
});
