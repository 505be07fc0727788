import { expect, test } from 'vitest';
import { dayInZone } from '../../../../app/custody/calendar.ts';
import { startOfDay } from '../../../../app/custody/zone-instant.ts';

test.each([
  ['2026-03-01', 'Europe/Berlin', '2026-02-28T23:00:00.000Z'], ['2026-07-01', 'Europe/Berlin', '2026-06-30T22:00:00.000Z'], ['2026-03-29', 'Europe/Berlin', '2026-03-28T23:00:00.000Z'],
  ['2026-01-01', 'Pacific/Kiritimati', '2025-12-31T10:00:00.000Z'], ['2026-01-01', 'America/St_Johns', '2026-01-01T03:30:00.000Z'], ['2026-01-01', 'Asia/Kathmandu', '2025-12-31T18:15:00.000Z'], ['2026-01-01', 'UTC', '2026-01-01T00:00:00.000Z'],
])('%s begins in %s at %s', (day, zone, instant) => {
  expect(startOfDay(day, zone)).toBe(instant);
  expect([dayInZone(instant, zone), dayInZone(new Date(Date.parse(instant) - 1).toISOString(), zone) < day]).toEqual([day, true]);
});
