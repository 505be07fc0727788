import { expect, test } from 'vitest';
import { controlLimits } from '../../../../app/statistics/control-chart.ts';
import { controlCourse } from '../../../../app/statistics/control-course.ts';

const LOW = [1, 2, 1, 2, 1, 2, 1, 2];
const HIGH = LOW.map((value) => value + 50);
const course = (values: readonly number[], breaks: readonly number[] = []) => controlCourse(values.map((value, i) => ({ value, begins: breaks.includes(i) })));

test('without a break it is one chart of individual values', () => {
  const { bases, points } = course([...LOW, 30]);
  expect(bases).toEqual([{ from: 0, count: 9, limits: controlLimits([...LOW, 30]) }]);
  expect(points).toHaveLength(9);
});

test('after a break the limits are those of what comes then', () => {
  const { bases, points } = course([...LOW, ...HIGH], [8]);
  expect(bases).toEqual([{ from: 0, count: 8, limits: controlLimits(LOW) }, { from: 8, count: 8, limits: controlLimits(HIGH) }]);
  expect(points.map(({ base }) => base)).toEqual([...LOW.map(() => 0), ...HIGH.map(() => 1)]);
  expect(points.every(({ signals }) => signals.length === 0)).toBe(true);
});

test('no rule of the Western Electric handbook looks across a break', () => {
  // Limits: mean 1.5, sigma 0.886. Seven values on one side before the break and one after it would make eight in a row.
  const side = [1.6, 1.7, 1.6, 1.7, 1.6, 1.7, 1.6];
  const across = course([...LOW, ...LOW, ...[1, 2, 1, 2], ...side, 1.6, ...LOW], [27]);
  expect(across.points[27]!.signals).toEqual([]);
  const through = course([...LOW, ...LOW, ...[1, 2, 1, 2], ...side, 1.6, ...LOW]);
  expect(through.points[27]!.signals).toEqual(['eight-in-a-row']);
});

test('a break at the very first value begins nothing twice, and a short stretch has no limits', () => {
  expect(course(LOW, [0]).bases).toHaveLength(1);
  const { bases, points } = course([...LOW, 9, 9], [8]);
  expect([bases[1]!.limits, points.slice(8).map(({ signals }) => signals)]).toEqual([null, [[], []]]);
});
