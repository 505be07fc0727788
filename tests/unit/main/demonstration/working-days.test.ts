import { describe, expect, test } from 'vitest';
import { instantAt, scenarioCalendar, workingDay } from '../../../../main/demonstration/working-days.ts';

describe('days of a scenario', () => {
  test('count from Monday to Friday', () => {
    expect(workingDay('2026-11-25', -1)).toBe('2026-11-24');
    expect(workingDay('2026-11-25', -3)).toBe('2026-11-20');
    expect(workingDay('2026-11-25', 3)).toBe('2026-11-30');
    expect(workingDay('2026-11-25', 0)).toBe('2026-11-25');
  });

  test('a weekend stands between two of them', () => {
    expect(workingDay('2026-11-28', -1)).toBe('2026-11-27');
    expect(workingDay('2026-11-29', 0)).toBe('2026-11-30');
    expect(workingDay('2026-11-28', 1)).toBe('2026-12-01');
  });

  test('times of day are those of the zone, summer and winter', () => {
    expect(instantAt('2026-07-01', '09:30', 'Europe/Berlin').toISOString()).toBe('2026-07-01T07:30:00.000Z');
    expect(instantAt('2026-12-01', '09:30', 'Europe/Berlin').toISOString()).toBe('2026-12-01T08:30:00.000Z');
    expect(instantAt('2026-12-01', '09:30', 'America/St_Johns').toISOString()).toBe('2026-12-01T13:00:00.000Z');
    expect(instantAt('2026-03-29', '12:00', 'Europe/London').toISOString()).toBe('2026-03-29T11:00:00.000Z');
  });

  test('today is the day in the zone, not in UTC', () => {
    expect(scenarioCalendar(new Date('2026-11-25T23:30:00.000Z'), 'Asia/Tokyo').due(0)).toBe('2026-11-26');
  });
});
