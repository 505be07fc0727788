import { describe, expect, test } from 'vitest';
import type { CaseView } from '../../../../app/contract/cases.ts';
import { ok } from '../../../../app/result.ts';
import { notFound } from '../../../../main/services/failures.ts';
import { createPrintServices, type PrintDeps } from '../../../../main/services/print-services.ts';
import type { Call } from '../../../../main/services/service.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { readPdf } from '../print/read-pdf.ts';
import { sampleCase, sampleLaboratory } from '../print/sample-case.ts';

/** One pixel of PNG. */
const PIXEL = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');

const call = (signal = new AbortController().signal): Call => ({ session: { personId: null }, signal, emit: () => undefined });

function servicesFor(view: CaseView | null, laboratory: ReturnType<typeof sampleLaboratory> | null = sampleLaboratory()) {
  const status = {
    version: '0', host: 'loopback' as const, hostNote: '', file: '', state: laboratory ? 'open' as const : 'none' as const, trouble: null,
    laboratory, people: [], me: null, guardsRestored: [],
  };
  const services = { 'casebook.status': async () => ok(status), 'cases.get': async () => (view ? ok(view) : notFound('This case')) } as unknown as PrintDeps['services'];
  return createPrintServices({ services, pool: createInlinePool() });
}

describe('printing for the counter', () => {
  test('a receipt is named after its case, and carries the logo', async () => {
    const laboratory = sampleLaboratory({ logo: { mediaType: 'image/png', bytes: new Uint8Array(PIXEL) } });
    const printed = await servicesFor(sampleCase(), laboratory)['print.receipt']({ caseId: 'case-1' }, call());
    expect(printed.ok && printed.value.name).toBe('Receipt C-2026-0117.pdf');
    const pdf = await readPdf(printed.ok ? printed.value.pdf : new Uint8Array());
    expect(pdf.alternatives).toContain('Logo of Saltmarsh Gem Laboratory');
  });

  test('labels are named after their case, in a name that every file system takes', async () => {
    const printed = await servicesFor({ ...sampleCase(), number: 'C/2026:117' })['print.labels']({ caseId: 'case-1' }, call());
    expect(printed.ok && printed.value.name).toBe('Labels C-2026-117.pdf');
  });

  test('without a casebook, or for a case that is not in it, the answer says so', async () => {
    const none = await servicesFor(sampleCase(), null)['print.receipt']({ caseId: 'x' }, call());
    expect(none).toMatchObject({ ok: false, error: { code: 'no-casebook' } });
    const missing = await servicesFor(null)['print.labels']({ caseId: 'x' }, call());
    expect(missing).toMatchObject({ ok: false, error: { code: 'not-found' } });
  });

  test('cancelled work gives no pages', async () => {
    const controller = new AbortController();
    controller.abort();
    expect(await servicesFor(sampleCase())['print.receipt']({ caseId: 'x' }, call(controller.signal))).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });
});
