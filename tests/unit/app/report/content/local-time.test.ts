import { expect, test } from 'vitest';
import { localDate, localSpan, localTime } from '../../../../../app/report/content/local-time.ts';

test('instants are told in the laboratory’s zone', () => {
  expect(localTime('2026-11-25T23:30:00.000Z', 'UTC')).toBe('25 Nov 2026, 23:30');
  expect(localTime('2026-11-25T23:30:00.000Z', 'Asia/Kolkata')).toBe('26 Nov 2026, 05:00');
  expect(localDate('2026-01-01T02:00:00.000Z', 'America/New_York')).toBe('31 Dec 2025');
  expect(localTime('2026-06-30T22:05:00.000Z', 'Europe/Berlin')).toBe('1 Jul 2026, 00:05');
});

test('a span is told as short as it can be', () => {
  expect(localSpan([], 'UTC')).toBe('');
  expect(localSpan(['2026-11-24T10:00:00.000Z', '2026-11-24T08:00:00.000Z'], 'UTC')).toBe('24 Nov 2026');
  expect(localSpan(['2026-11-25T10:00:00.000Z', '2026-11-24T08:00:00.000Z'], 'UTC')).toBe('24 – 25 Nov 2026');
  expect(localSpan(['2026-10-31T10:00:00.000Z', '2026-11-02T08:00:00.000Z'], 'UTC')).toBe('31 Oct – 2 Nov 2026');
  expect(localSpan(['2025-12-31T10:00:00.000Z', '2026-01-02T08:00:00.000Z'], 'UTC')).toBe('31 Dec 2025 – 2 Jan 2026');
});
