import { describe, expect, test } from 'vitest';
import { arrangeStones } from '../../../../main/demonstration/arrange-stones.ts';
import { drawPiece, type Piece } from '../../../../main/demonstration/draw-piece.ts';
import { ARRANGEMENTS } from '../../../../main/demonstration/scenario-schema.ts';
import { distanceIn, outlineOf } from '../../../../main/demonstration/stone-outline.ts';

const blue = { shape: 'round', glow: { colour: 'blue', strength: 'strong' } } as const;
const orange = { shape: 'round', glow: { colour: 'orange', strength: 'strong' } } as const;
const inert = { shape: 'round', glow: { colour: 'none', strength: 'inert' } } as const;
const piece = (stones: Piece['stones'], light: Piece['light'] = 'long-wave'): Piece => ({ arrangement: 'row', stones, light, seed: 3 });

function colourAt(drawn: ReturnType<typeof drawPiece>, x: number, y: number): number[] {
  const at = (Math.round(y * drawn.width) * drawn.width + Math.round(x * drawn.width)) * 3;
  return [...drawn.rgb.subarray(at, at + 3)];
}

/** Points that differ between two pictures. */
const differing = (a: Uint8Array, b: Uint8Array): number => a.reduce((sum, value, i) => sum + (value === b[i] ? 0 : 1), 0);

describe('pictures of pieces', () => {
  test('each stone glows in its own colour at its own place', () => {
    const drawn = drawPiece(piece([blue, orange, inert]));
    const [first, second, third] = arrangeStones('row', 3).map((spot) => colourAt(drawn, spot.x + spot.r / 2, spot.y));
    expect(first![2]).toBeGreaterThan(first![0]! + 60);
    expect(second![0]).toBeGreaterThan(second![2]! + 60);
    expect(Math.max(...third!)).toBeLessThan(40);
  });

  test('the word that marks it stands in the lower left, in every light', () => {
    for (const light of ['white', 'long-wave', 'short-wave', 'polarised'] as const) {
      const { rgb, width, height } = drawPiece(piece([], light));
      const ground = rgb.subarray(0, 3);
      const marked: number[] = [];
      for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) if (rgb[(y * width + x) * 3] !== ground[0]) marked.push(x, y);
      expect(marked.length).toBeGreaterThan(400);
      expect(Math.max(...marked.filter((_, i) => i % 2 === 0))).toBeLessThan(width / 2);
      expect(Math.min(...marked.filter((_, i) => i % 2 === 1))).toBeGreaterThan(height * 0.8);
    }
  });

  test('the same piece is drawn the same, another seed differs', () => {
    expect(differing(drawPiece(piece([blue])).rgb, drawPiece(piece([blue])).rgb)).toBe(0);
    expect(differing(drawPiece(piece([blue])).rgb, drawPiece({ ...piece([blue]), seed: 4 }).rgb)).toBeGreaterThan(100);
  });

  test('stones of every arrangement lie inside the picture, and none on another', () => {
    for (const arrangement of ARRANGEMENTS) {
      const spots = arrangeStones(arrangement, { single: 1, row: 3, arc: 8, rings: 19, scatter: 28 }[arrangement]);
      for (const { x, y, r } of spots) expect(x - r > 0 && x + r < 1 && y - r > 0 && y + r < 2 / 3).toBe(true);
      spots.forEach((a, i) => spots.slice(i + 1).forEach((b) => expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(a.r + b.r - 0.001)));
    }
  });

  test('outlines: a pear narrows to the top, an emerald cut is longer than wide, unknown words are round', () => {
    expect(distanceIn(outlineOf('pear'), 0.4, -0.8)).toBeGreaterThan(distanceIn(outlineOf('pear'), 0.4, 0.8));
    expect(distanceIn(outlineOf('emerald cut'), 0.9, 0)).toBeGreaterThan(distanceIn(outlineOf('emerald cut'), 0, 0.9));
    expect(distanceIn(outlineOf('a shape without a name'), 0.6, 0.8)).toBeCloseTo(1, 12);
  });
});
