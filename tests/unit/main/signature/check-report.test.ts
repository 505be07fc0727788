import { expect, test } from 'vitest';
import { renderReceipt } from '../../../../main/print/render-receipt.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import { checkReport } from '../../../../main/signature/check-report.ts';
import { describeFile } from '../../../../main/signature/describe-file.ts';
import { buildReceiptModel } from '../../../../app/report/build-receipt-model.ts';
import { attachedTo } from '../print/read-pdf.ts';
import { sampleCase, sampleLaboratory } from '../print/sample-case.ts';
import { sampleReport } from '../print/sample-report.ts';
import { signedSample } from './signed-sample.ts';

test('a signed report is sound, and carries its signature where another reader finds it', async () => {
  const pdf = await signedSample();
  const check = checkReport(pdf);
  expect(check.kind === 'sound' ? check.signed.statement : null).toMatchObject({ number: 'S-2026-0088', revision: 1, laboratory: 'Saltmarsh Gem Laboratory', file: { bytes: pdf.byteLength } });
  const found = (await attachedTo(pdf)).get('signature.txt')!;
  expect(Buffer.from(found).toString('utf8').split('\n')[0]).toContain('"statement":"culet-report-1"');
});

test('signing twice gives the same bytes: nothing comes from chance or clock', async () => {
  expect(Buffer.compare(await signedSample(), await signedSample())).toBe(0);
});

test('a report from before there were signatures, a draft and a receipt are told apart', async () => {
  expect(checkReport(await renderReport(sampleReport())).kind).toBe('unsigned');
  expect(checkReport(await renderReport(sampleReport({ draft: true, number: '', revision: 0 }))).kind).toBe('draft');
  expect(checkReport(await renderReceipt(buildReceiptModel(sampleLaboratory(), sampleCase(), null))).kind).toBe('not-a-report');
});

test('room for a signature that was never filled is no signature', async () => {
  const pdf = await renderReport(sampleReport(), { document: '{}', records: [], signed: true });
  expect(describeFile(pdf).signature.bytes).toBe(3072);
  expect(checkReport(pdf).kind).toBe('altered');
});

test('a file without room can’t be described for signing', async () => {
  const pdf = await renderReport(sampleReport(), { document: '{}', records: [], signed: false });
  expect(() => describeFile(pdf)).toThrow('no room');
});
