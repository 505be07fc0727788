import { expect, test } from 'vitest';
import { sectionOf, reportModel } from '../../../../../app/report/report-model.ts';
import { readStoredReport } from '../../../../../app/report/stored/read-stored-report.ts';
import { sampleOfMany, sampleReport, sampleReport1 } from '../../../main/print/sample-report.ts';

test('a report in its first form is read as one of today, and nothing of it is lost', () => {
  const old = sampleReport1();
  const model = readStoredReport(JSON.stringify(old));
  expect(reportModel.parse(model)).toEqual(model);
  const [stone] = old.stones;
  expect(sectionOf(model, 'opinions')?.stones[0]?.conclusion).toEqual(stone!.conclusion);
  expect(sectionOf(model, 'results')?.stones[0]).toMatchObject({ facts: stone!.facts, figures: stone!.figures, setAside: stone!.setAside, notDone: stone!.notDone });
  expect(sectionOf(model, 'raw-records')?.records).toEqual(old.rawRecords);
  expect(sectionOf(model, 'custody')?.entries).toEqual(old.custody);
  const texts = JSON.stringify(model);
  for (const finding of stone!.findings) expect(texts).toContain(JSON.stringify(finding.statement));
});

test('a report of today is read as it is', () => {
  for (const model of [sampleReport(), sampleOfMany(2)]) expect(readStoredReport(JSON.stringify(model))).toEqual(model);
});

test('what is no report is refused', () => {
  expect(() => readStoredReport('{"schema":"something"}')).toThrow();
});
