import { describe, expect, test } from 'vitest';
import { labelMarks, type MarkLabel, type PlacedMark } from '../../../../app/piece/label-marks.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { slowness } from '../../../fixtures/slowness.ts';

const BOX = { width: 34, height: 17 } as const;

function ring(count: number, reach: number, radius: number): PlacedMark[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = 2 * Math.PI * i / count;
    return { id: `m${i}`, x: 400 + reach * Math.cos(angle), y: 300 + reach * Math.sin(angle), radius, ...BOX };
  });
}

function scattered(count: number, width: number, height: number, seed: number): PlacedMark[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => ({ id: `m${i}`, x: random.between(0, width), y: random.between(0, height), radius: 9, ...BOX }));
}

const overlap = (a: MarkLabel, b: MarkLabel): boolean => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
const collisions = (labels: readonly MarkLabel[]): number => labels.reduce((sum, a, i) => sum + labels.slice(i + 1).filter((b) => overlap(a, b)).length, 0);

describe('numbers beside their stones', () => {
  test('stand outside of a ring, close to their stones and off all others', () => {
    const stones = ring(18, 200, 24);
    const labels = labelMarks(stones);
    expect(collisions(labels)).toBe(0);
    labels.forEach((label, i) => {
      const stone = stones[i]!;
      const middle = { x: label.x + label.width / 2, y: label.y + label.height / 2 };
      expect(Math.hypot(middle.x - 400, middle.y - 300)).toBeGreaterThan(200 + stone.radius);
      expect(Math.hypot(middle.x - stone.x, middle.y - stone.y)).toBeLessThan(stone.radius + 40);
    });
  });

  test('the leader joins the edge of the stone with the edge of the box', () => {
    const [stone] = ring(1, 0, 30);
    const [label] = labelMarks([stone!]);
    const { leader } = label!;
    expect(Math.hypot(leader.x1 - stone!.x, leader.y1 - stone!.y)).toBeCloseTo(30, 6);
    const onEdge = [leader.x2 - label!.x, label!.x + label!.width - leader.x2, leader.y2 - label!.y, label!.y + label!.height - leader.y2];
    expect(Math.min(...onEdge.map(Math.abs))).toBeCloseTo(0, 6);
  });

  test.each([1, 2, 3, 4, 5])('never collide, 200 marks scattered (seed %i)', (seed) => {
    const labels = labelMarks(scattered(200, 900, 700, seed));
    expect(labels).toHaveLength(200);
    expect(collisions(labels)).toBe(0);
  });

  test('never collide where all stones lie on one point', () => {
    expect(collisions(labelMarks(Array.from({ length: 60 }, (_, i) => ({ id: `m${i}`, x: 100, y: 100, radius: 5, ...BOX }))))).toBe(0);
  });

  test('stay on the paper as long as there is room on it', () => {
    const bounds = { x: 0, y: 0, width: 500, height: 400 };
    const labels = labelMarks(scattered(120, 500, 400, 9).map((mark) => ({ ...mark, width: 24, height: 11 })), bounds);
    expect(collisions(labels)).toBe(0);
    for (const label of labels) {
      expect(label.x).toBeGreaterThanOrEqual(0);
      expect(label.y).toBeGreaterThanOrEqual(0);
      expect(label.x + label.width).toBeLessThanOrEqual(500);
      expect(label.y + label.height).toBeLessThanOrEqual(400);
    }
  });

  test('where the paper is full, overflow it rather than overlap', () => {
    const labels = labelMarks(scattered(20, 60, 60, 4), { x: 0, y: 0, width: 60, height: 60 });
    expect(collisions(labels)).toBe(0);
  });

  test('do not depend on the order of the marks', () => {
    const stones = scattered(60, 600, 500, 11);
    const forth = labelMarks(stones);
    const back = labelMarks(stones.toReversed()).toReversed();
    expect(back).toEqual(forth);
  });

  test('200 marks are laid out quickly enough to follow a hand', () => {
    const stones = scattered(200, 900, 700, 21);
    labelMarks(stones);
    const started = performance.now();
    labelMarks(stones);
    // About 25 ms on a quiet core.
    expect(performance.now() - started).toBeLessThan(400 * slowness());
  });
});
