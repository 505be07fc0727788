import type { Outline } from '../images/photograph.ts';
import { MARK_LIMITS, type Mark } from './mark.ts';

type Marks = readonly Mark[];

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** The lowest number that no mark carries. */
export function freeNumber(marks: Marks): number {
  const taken = new Set(marks.map((mark) => mark.number));
  let number = 1;
  while (taken.has(number)) number += 1;
  return number;
}

/** Ids of the stones that have no mark, in the order given. */
export const unmarkedStones = (marks: Marks, stoneIds: readonly string[]): string[] => {
  const tied = new Set(marks.map((mark) => mark.stoneId));
  return stoneIds.filter((id) => !tied.has(id));
};

/** Adds a mark with the lowest free number, tied to the first stone that has none. Positions outside the picture are drawn to its edge. */
export function placeMark(marks: Marks, stoneIds: readonly string[], placed: Outline & { readonly id: string }): Mark[] {
  const { least, most } = MARK_LIMITS.radius;
  return [...marks, {
    id: placed.id, stoneId: unmarkedStones(marks, stoneIds)[0] ?? null, number: freeNumber(marks),
    x: within(placed.x, 0, 1), y: within(placed.y, 0, 1), radius: within(placed.radius, least, most),
  }];
}

const change = (marks: Marks, id: string, alter: (mark: Mark) => Mark): Mark[] => marks.map((mark) => (mark.id === id ? alter(mark) : mark));

/** Moves a mark to a place; it stays on the picture. */
export const moveMark = (marks: Marks, id: string, x: number, y: number): Mark[] =>
  change(marks, id, (mark) => ({ ...mark, x: within(x, 0, 1), y: within(y, 0, 1) }));

/** Makes a mark larger or smaller by a factor. */
export const resizeMark = (marks: Marks, id: string, factor: number): Mark[] =>
  change(marks, id, (mark) => ({ ...mark, radius: within(mark.radius * factor, MARK_LIMITS.radius.least, MARK_LIMITS.radius.most) }));

export const removeMark = (marks: Marks, id: string): Mark[] => marks.filter((mark) => mark.id !== id);

/** Ties a mark to a stone, or to none. A stone has one mark on a map: another that was tied to it is let go. */
export const tieMark = (marks: Marks, id: string, stoneId: string | null): Mark[] => marks.map((mark) => {
  if (mark.id === id) return { ...mark, stoneId };
  return stoneId !== null && mark.stoneId === stoneId ? { ...mark, stoneId: null } : mark;
});

/** Gives a mark a number; a mark that had it gets the old one in exchange. */
export function numberMark(marks: Marks, id: string, number: number): Mark[] {
  const before = marks.find((mark) => mark.id === id)?.number;
  if (before === undefined) return [...marks];
  return marks.map((mark) => {
    if (mark.id === id) return { ...mark, number };
    return mark.number === number ? { ...mark, number: before } : mark;
  });
}

/** Two outlines are one stone where the centre of either lies inside the other. `aspect` is width ÷ height of the picture. */
const sameStone = (a: Outline, b: Outline, aspect: number): boolean => Math.hypot(a.x - b.x, (a.y - b.y) / aspect) < Math.max(a.radius, b.radius);

/** The outlines that lie on no mark yet. */
export const freshOutlines = (marks: Marks, outlines: readonly Outline[], aspect: number): Outline[] =>
  outlines.filter((outline) => !marks.some((mark) => sameStone(mark, outline, aspect)));

/** Makes marks of outlines, tied to no stone: which stone it is, the eye says. */
export function acceptOutlines(marks: Marks, outlines: readonly (Outline & { readonly id: string })[]): Mark[] {
  return outlines.reduce<Mark[]>((now, outline) => placeMark(now, [], outline), [...marks]);
}
