import { expect, test } from 'vitest';
import { reportDifference } from '../../../../../app/report/revision/report-difference.ts';
import { sampleReport, sampleReport1 } from '../../../main/print/sample-report.ts';

test('the same content differs in nothing, whatever its number and day', () => {
  expect(reportDifference(sampleReport(), sampleReport({ revision: 2, issued: '1 Dec 2026', issuedAt: '2026-12-01T10:00:00.000Z' }))).toEqual([]);
});

test('a changed, a new and a lost statement are each told in a sentence', () => {
  const [stone] = sampleReport1().stones;
  const after = sampleReport({
    asks: 'Natural, or grown?',
    stones: [{ ...stone!, conclusion: { ...stone!.conclusion!, words: 'not diamond' }, findings: stone!.findings.slice(0, -1), setAside: [{ statement: 'A line at 503.2 nm', reason: 'the lamp' }] }],
  });
  const changes = reportDifference(sampleReport(), after);
  expect(changes).toContain('“Client asks”: “Natural or laboratory-grown?” became “Natural, or grown?”.');
  expect(changes).toContain('The opinion on stone A-3: “laboratory-grown diamond – CVD growth characteristics” became “not diamond”.');
  expect(changes).toContain('What was set aside for stone A-3: “A line at 503.2 nm” is new: “the lamp”.');
  expect(changes.some((sentence) => sentence.startsWith('Finding F6 of stone A-3 no longer stands'))).toBe(true);
});

test('a section that went is one sentence', () => {
  const before = sampleReport();
  expect(reportDifference(before, { ...before, sections: before.sections.filter((part) => part.section !== 'custody') })).toEqual(['The section “Custody log” was left out.']);
});
