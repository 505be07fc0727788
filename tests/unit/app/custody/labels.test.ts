import { describe, expect, test } from 'vitest';
import { addDays, dayInZone, isDay, isZone } from '../../../../app/custody/calendar.ts';
import { caseNumber } from '../../../../app/custody/case-number.ts';
import { itemLabel, stoneLabel } from '../../../../app/custody/item-label.ts';

describe('labels and numbers', () => {
  test.each([[0, 'A'], [25, 'Z'], [26, 'AA'], [51, 'AZ'], [52, 'BA'], [701, 'ZZ'], [702, 'AAA']])('item %i is %s', (index, label) => {
    expect(itemLabel(index)).toBe(label);
  });
  test('no label for a negative index', () => {
    expect(() => itemLabel(-1)).toThrow(RangeError);
  });
  test('labels of 5000 items are all different', () => {
    expect(new Set(Array.from({ length: 5000 }, (_, i) => itemLabel(i))).size).toBe(5000);
  });
  test('stone and case', () => {
    expect(stoneLabel('AB', 3)).toBe('AB-3');
    expect(caseNumber(2026, 7)).toBe('C-2026-0007');
    expect(caseNumber(2026, 12_345)).toBe('C-2026-12345');
  });
});

describe('calendar', () => {
  test.each([
    ['2026-12-31T23:30:00.000Z', 'Europe/Berlin', '2027-01-01'],
    ['2026-12-31T23:30:00.000Z', 'America/New_York', '2026-12-31'],
    ['2026-01-01T00:30:00.000Z', 'America/New_York', '2025-12-31'],
    ['2026-03-29T01:00:00.000Z', 'Europe/Berlin', '2026-03-29'],
  ])('%s in %s is %s', (instant, zone, day) => {
    expect(dayInZone(instant, zone)).toBe(day);
  });
  test('zones and days that do not exist', () => {
    expect(isZone('Europe/Berlin')).toBe(true);
    expect(isZone('Europe/Atlantis')).toBe(false);
    expect(isDay('2028-02-29')).toBe(true);
    expect(isDay('2026-02-29')).toBe(false);
    expect(isDay('2026-13-01')).toBe(false);
  });
  test('days added pass months and the change of the clock', () => {
    expect(addDays('2026-02-27', 3)).toBe('2026-03-02');
    expect(addDays('2026-03-28', 2)).toBe('2026-03-30');
  });
});
