import type { Mark } from './mark.ts';

/** clockwise: a stone in the middle first, then the others from the top around · rows: from left to right, from above downwards */
export const MARK_ORDERS = ['clockwise', 'rows'] as const;
export type MarkOrder = (typeof MARK_ORDERS)[number];

type Spot = { readonly mark: Mark; readonly x: number; readonly y: number };

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

function clockwise(spots: readonly Spot[]): Spot[] {
  const middle = { x: mean(spots.map((spot) => spot.x)), y: mean(spots.map((spot) => spot.y)) };
  const far = (spot: Spot): number => Math.hypot(spot.x - middle.x, spot.y - middle.y);
  const reach = Math.max(...spots.map(far), 0);
  // A stone that covers the middle, or lies well inside the others, has no direction of its own.
  const central = (spot: Spot): boolean => far(spot) < Math.max(spot.mark.radius, reach / 8);
  const turn = (spot: Spot): number => (central(spot) ? -1 : (Math.atan2(spot.x - middle.x, middle.y - spot.y) + 2 * Math.PI) % (2 * Math.PI));
  return spots.toSorted((a, b) => turn(a) - turn(b) || far(a) - far(b));
}

function inRows(spots: readonly Spot[]): Spot[] {
  const rows: Spot[][] = [];
  for (const spot of spots.toSorted((a, b) => a.y - b.y)) {
    const row = rows.at(-1);
    // A row takes what lies no lower than the radius of its stones below its own mean height.
    if (row && spot.y - mean(row.map((one) => one.y)) < Math.max(spot.mark.radius, ...row.map((one) => one.mark.radius))) row.push(spot);
    else rows.push([spot]);
  }
  return rows.flatMap((row) => row.toSorted((a, b) => a.x - b.x));
}

/** Marks in the order in which they are counted. `aspect` is width ÷ height of the picture. */
export function orderMarks(marks: readonly Mark[], order: MarkOrder, aspect: number): Mark[] {
  const spots = marks.map((mark) => ({ mark, x: mark.x, y: mark.y / aspect }));
  return (order === 'clockwise' ? clockwise(spots) : inRows(spots)).map((spot) => spot.mark);
}

/** Numbers all marks anew from 1 in an order; what they are tied to stays. */
export function renumberMarks(marks: readonly Mark[], order: MarkOrder, aspect: number): Mark[] {
  const place = new Map(orderMarks(marks, order, aspect).map((mark, index) => [mark.id, index + 1]));
  return marks.map((mark) => ({ ...mark, number: place.get(mark.id)! }));
}

/** Ties the marks that have no stone to the stones that have no mark, both in their order. */
export function tieInOrder(marks: readonly Mark[], stoneIds: readonly string[]): Mark[] {
  const tied = new Set(marks.map((mark) => mark.stoneId));
  const waiting = stoneIds.filter((id) => !tied.has(id));
  const next = new Map(marks.filter((mark) => mark.stoneId === null).toSorted((a, b) => a.number - b.number).map((mark, index) => [mark.id, waiting[index] ?? null]));
  return marks.map((mark) => (mark.stoneId === null ? { ...mark, stoneId: next.get(mark.id) ?? null } : mark));
}
