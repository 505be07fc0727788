import { describe, expect, test } from 'vitest';
import { beginHistory, redo, stepOn, undo } from '../../../../app/piece/edit-history.ts';
import { acceptOutlines, freeNumber, freshOutlines, moveMark, numberMark, placeMark, removeMark, resizeMark, tieMark } from '../../../../app/piece/edit-marks.ts';
import { columnName, gridAspect, gridDrawing } from '../../../../app/piece/grid-drawing.ts';
import { mapChanges } from '../../../../app/piece/map-changes.ts';
import { gapSentences, mapGaps } from '../../../../app/piece/map-gaps.ts';
import { mark, MARK_LIMITS, USUAL_GRID, type Mark } from '../../../../app/piece/mark.ts';
import { renumberMarks, tieInOrder } from '../../../../app/piece/order-marks.ts';

const STONES = ['s1', 's2', 's3'];
const at = (id: string, number: number, x: number, y: number, stoneId: string | null = null): Mark => ({ id, number, x, y, radius: 0.02, stoneId });

describe('marks', () => {
  test('are placed with the lowest free number and tied to the next stone', () => {
    const one = placeMark([], STONES, { id: 'a', x: 0.5, y: 0.5, radius: 0.02 });
    const two = placeMark(one, STONES, { id: 'b', x: 1.2, y: -0.1, radius: 9 });
    expect(two).toEqual([at('a', 1, 0.5, 0.5, 's1'), { id: 'b', number: 2, stoneId: 's2', x: 1, y: 0, radius: MARK_LIMITS.radius.most }]);
    expect(freeNumber(removeMark(two, 'a'))).toBe(1);
    const full = STONES.reduce((marks, id) => placeMark(marks, STONES, { id, x: 0, y: 0, radius: 0.02 }), [] as Mark[]);
    expect(placeMark(full, STONES, { id: 'more', x: 0, y: 0, radius: 0.02 }).at(-1)?.stoneId).toBeNull();
    expect(two.every((one) => mark.safeParse(one).success)).toBe(true);
  });

  test('stay on the picture and within their sizes when they are moved and resized', () => {
    const marks = [at('a', 1, 0.5, 0.5)];
    expect(moveMark(marks, 'a', -1, 2)[0]).toMatchObject({ x: 0, y: 1 });
    expect(resizeMark(marks, 'a', 1000)[0]?.radius).toBe(MARK_LIMITS.radius.most);
    expect(resizeMark(marks, 'a', 1e-6)[0]?.radius).toBe(MARK_LIMITS.radius.least);
  });

  test('a stone has one mark, a number has one mark', () => {
    const marks = [at('a', 1, 0.1, 0.1, 's1'), at('b', 2, 0.2, 0.2, 's2')];
    expect(tieMark(marks, 'b', 's1').map((one) => one.stoneId)).toEqual([null, 's1']);
    expect(tieMark(marks, 'b', null).map((one) => one.stoneId)).toEqual(['s1', null]);
    expect(numberMark(marks, 'b', 1).map((one) => one.number)).toEqual([2, 1]);
    expect(numberMark(marks, 'b', 7).map((one) => one.number)).toEqual([1, 7]);
  });

  test('outlines that lie on a mark are known already; the others become marks without a stone', () => {
    const marks = [at('a', 1, 0.5, 0.5, 's1')];
    // In a picture twice as wide as high, 0.03 of the height is 0.015 of the width: inside the radius of 0.02.
    const outlines = [{ x: 0.5, y: 0.53, radius: 0.01 }, { x: 0.5, y: 0.58, radius: 0.01 }];
    expect(freshOutlines(marks, outlines, 2)).toEqual([outlines[1]]);
    expect(acceptOutlines(marks, [{ id: 'n', ...outlines[1]! }])[1]).toEqual({ id: 'n', number: 2, stoneId: null, x: 0.5, y: 0.58, radius: 0.01 });
  });

  test('are numbered clockwise from the top, a stone in the middle first', () => {
    const around = ['top', 'right', 'bottom', 'left'].map((id, i) => at(id, 9 - i, 0.5 + 0.3 * Math.sin(i * Math.PI / 2), 0.5 - 0.3 * Math.cos(i * Math.PI / 2)));
    const numbered = renumberMarks([...around, at('middle', 20, 0.5, 0.5)], 'clockwise', 1);
    expect(numbered.toSorted((a, b) => a.number - b.number).map((one) => one.id)).toEqual(['middle', 'top', 'right', 'bottom', 'left']);
  });

  test('are numbered in rows, though a row lies a little slanted', () => {
    const marks = [at('c', 1, 0.9, 0.102), at('a', 2, 0.1, 0.11), at('d', 3, 0.1, 0.4), at('b', 4, 0.5, 0.1), at('e', 5, 0.6, 0.39)];
    expect(renumberMarks(marks, 'rows', 1).toSorted((a, b) => a.number - b.number).map((one) => one.id)).toEqual(['a', 'b', 'c', 'd', 'e']);
  });

  test('are tied in order, and those that are tied stay', () => {
    const marks = [at('a', 3, 0, 0), at('b', 1, 0, 0, 's2'), at('c', 2, 0, 0), at('d', 4, 0, 0)];
    expect(tieInOrder(marks, STONES).map((one) => one.stoneId)).toEqual(['s3', 's2', 's1', null]);
  });

  test('what is open is named in sentences, over all maps of the piece', () => {
    const stones = STONES.map((id, i) => ({ id, label: `B-${i + 1}` }));
    const gaps = mapGaps([[at('a', 1, 0, 0, 's1'), at('b', 2, 0, 0)], [at('c', 1, 0, 0, 's3')]], stones);
    expect(gapSentences(gaps)).toEqual(['one stone without a mark: B-2.', 'one mark without a stone: 2.']);
    expect(gapSentences(mapGaps([STONES.map((id, i) => at(id, i + 1, 0, 0, id))], stones))).toEqual([]);
    expect(gapSentences({ unmarked: Array.from({ length: 40 }, (_, i) => `B-${i + 1}`), untied: [] })[0]).toMatch(/B-12 and 28 more\.$/);
  });

  test('a change says what it changed', () => {
    const before = { name: 'front', ground: USUAL_GRID, marks: [at('a', 1, 0.1, 0.1, 's1'), at('b', 2, 0.2, 0.2)] };
    expect(mapChanges(null, before)).toBe('made, with two marks');
    expect(mapChanges(before, before)).toBe('nothing');
    const after = { name: 'back', ground: { kind: 'photograph' as const, photographId: 'p' }, marks: [at('a', 1, 0.3, 0.1, 's2'), at('c', 3, 0.5, 0.5)] };
    expect(mapChanges(before, after)).toBe('named “back”, placed on another picture, 1 placed, 1 removed, 1 moved and 1 tied otherwise');
  });

  test('steps are taken back and forward again; a drag is one step', () => {
    const dragged = [2, 3, 4].reduce((history, value, i) => stepOn(history, value, i > 0), beginHistory(1));
    expect(undo(dragged).now).toBe(1);
    expect(redo(undo(dragged)).now).toBe(4);
    expect(redo(stepOn(undo(dragged), 9)).now).toBe(9);
    expect(undo(beginHistory(1)).now).toBe(1);
  });

  test('the grid has square fields with names along two edges', () => {
    const drawing = gridDrawing({ kind: 'grid', columns: 28, rows: 7 }, 560);
    expect([drawing.width, drawing.height, gridAspect({ kind: 'grid', columns: 28, rows: 7 })]).toEqual([560, 140, 4]);
    expect(drawing.primitives.filter((p) => p.kind === 'line')).toHaveLength(29 + 8);
    expect(drawing.primitives.flatMap((p) => (p.kind === 'text' ? [p.text] : []))).toContain('AB');
    expect([columnName(0), columnName(25), columnName(26)]).toEqual(['A', 'Z', 'AA']);
  });
});
