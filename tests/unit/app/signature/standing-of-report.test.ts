import { expect, test } from 'vitest';
import { standingOfReport, type HeldReport } from '../../../../app/signature/standing-of-report.ts';

const held = (revision: number, change: Partial<HeldReport> = {}): HeldReport => ({ number: 'S-2026-0001', revision, issuedAt: `2026-11-2${revision}T10:00:00.000Z`, ...change });
const report = { number: 'S-2026-0001', revision: 1 };

test('the newest revision is in force', () => {
  expect(standingOfReport(report, [held(1), held(3, { number: 'S-2026-0002' })]).state).toBe('in-force');
  expect(standingOfReport({ ...report, revision: 2 }, [held(2), held(1)]).state).toBe('in-force');
});

test('an older one is replaced, whatever the order, and the newest is named', () => {
  expect(standingOfReport(report, [held(1), held(3), held(2)])).toEqual({ state: 'superseded', sentence: 'It was replaced by revision 3, issued 2026-11-23.' });
  expect(standingOfReport(report, [held(2, { withdrawn: { at: '2026-12-01T08:00:00.000Z', reason: 'wrong stone.' } }), held(1)]).sentence).toContain('which was withdrawn itself');
});

test('a withdrawn one says when and why, also where a newer one stands', () => {
  const gone = held(1, { withdrawn: { at: '2026-12-01T08:00:00.000Z', reason: 'The stones were exchanged.' } });
  expect(standingOfReport(report, [gone, held(2)])).toEqual({ state: 'withdrawn', sentence: 'It was withdrawn on 2026-12-01: The stones were exchanged.' });
});

test('one that the casebook does not hold is said to be missing', () => {
  expect(standingOfReport({ ...report, revision: 4 }, [held(1)]).state).toBe('not-ours');
  expect(standingOfReport(report, []).state).toBe('not-ours');
});
