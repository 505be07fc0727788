import { expect, test } from 'vitest';
import { placeLabels } from '../../../../app/figure/place-labels.ts';
import type { LabelPlacement, LabelRequest, LabelSpace } from '../../../../app/figure/place-labels.ts';
import { seeded } from './seeded.ts';

const SPACE: LabelSpace = { left: 4, right: 476, rows: 5, gap: 9, offset: 4, clearance: 2.5, blocked: [] };

/** Every pair of labels that touch and every line that runs through another's label; empty when all is well. */
function collisions(requests: readonly LabelRequest[], placement: LabelPlacement, space: LabelSpace): string[] {
  const out: string[] = [];
  for (const a of placement.placed) {
    if (a.left < space.left || a.right > space.right || a.row >= space.rows) out.push(`${a.index} outside`);
    const near = Math.min(Math.abs(a.left - requests[a.index]!.x), Math.abs(a.right - requests[a.index]!.x));
    if (near > space.offset + 1e-9) out.push(`${a.index} away from its line`);
    for (const b of placement.placed) {
      if (b.index === a.index) continue;
      if (a.row === b.row && a.left < b.right + space.gap - 1e-9 && b.left < a.right + space.gap - 1e-9) out.push(`${a.index} touches ${b.index}`);
      const x = requests[b.index]!.x;
      if (b.row >= a.row && x > a.left - space.clearance && x < a.right + space.clearance) out.push(`line ${b.index} crosses label ${a.index}`);
    }
    for (const block of space.blocked) if (block.row === a.row && a.left < block.right && block.left < a.right) out.push(`${a.index} on taken room`);
  }
  return out;
}

test('labels never touch, in 2,000 random crowds', () => {
  const random = seeded(1);
  let dropped = 0;
  for (let round = 0; round < 2000; round++) {
    const count = 1 + Math.floor(random() * 16);
    const from = random() * 300;
    const requests = Array.from({ length: count }, () => ({ x: from + random() * (random() < 0.5 ? 60 : 176), width: 40 + random() * 120, importance: random() * 3 }));
    const space = { ...SPACE, rows: 1 + Math.floor(random() * 8), blocked: random() < 0.5 ? [{ row: 0, left: 4, right: 55 }] : [] };
    const placement = placeLabels(requests, space);
    expect(collisions(requests, placement, space), `round ${round}`).toEqual([]);
    expect(placement.placed.length + placement.dropped.length).toBe(count);
    dropped += placement.dropped.length;
  }
  // The test must have met crowds that do not fit.
  expect(dropped).toBeGreaterThan(100);
});

test('eight labels within 60 nm of a 480 px figure all find room in five rows', () => {
  const requests = [550, 554, 563, 575, 581, 590, 594, 608].map((nm) => ({ x: 60 + (nm - 410) * 0.92, width: 95, importance: 1 }));
  expect(placeLabels(requests, SPACE).dropped).toEqual([]);
});

test('where room is short the least important goes', () => {
  const requests = [{ x: 100, width: 400, importance: 1 }, { x: 101, width: 300, importance: 3 }, { x: 102, width: 350, importance: 2 }];
  const placement = placeLabels(requests, { ...SPACE, rows: 1 });
  expect(placement.placed.map((p) => p.index)).toEqual([1]);
  expect(placement.dropped).toEqual([0, 2]);
});

test('a label too wide for the figure does not cost the others theirs', () => {
  const requests = [{ x: 200, width: 600, importance: 9 }, { x: 100, width: 50, importance: 1 }];
  expect(placeLabels(requests, SPACE)).toMatchObject({ dropped: [0], rowsUsed: 1 });
});

test('the order of the requests does not change what is placed', () => {
  const requests = [550, 554, 563, 575, 581, 590].map((nm, i) => ({ x: 60 + (nm - 410) * 0.92, width: 110, importance: i + 1 }));
  const rowsByX = (list: readonly LabelRequest[]): Map<number, number> => new Map(placeLabels(list, { ...SPACE, rows: 3 }).placed.map((p) => [list[p.index]!.x, p.row]));
  expect(rowsByX([...requests].reverse())).toEqual(rowsByX(requests));
});

test('many more lines than anyone reads are placed in bounded time', () => {
  const random = seeded(5);
  const requests = Array.from({ length: 200 }, () => ({ x: 20 + random() * 440, width: 60 + random() * 40, importance: random() }));
  const placement = placeLabels(requests, { ...SPACE, rows: 8 });
  expect(collisions(requests, placement, { ...SPACE, rows: 8 })).toEqual([]);
  expect(placement.placed.length).toBeGreaterThan(10);
});
