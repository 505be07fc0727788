import { expect, test } from 'vitest';
import { buildReceiptModel } from '../../../../app/report/build-receipt-model.ts';
import { renderReceipt } from '../../../../main/print/render-receipt.ts';
import { readPdf } from './read-pdf.ts';
import { sampleCase, sampleItem, sampleLaboratory } from './sample-case.ts';

const model = buildReceiptModel(sampleLaboratory(), sampleCase(), null);

test('a receipt tells who, what, when, under which seal and on which conditions', async () => {
  const pdf = await readPdf(await renderReceipt(model));
  const all = pdf.pages.join(' ');
  for (const text of ['Saltmarsh Gem Laboratory', 'Case C-2026-0117, received 21 Nov 2026, 00:30 (Europe/Warsaw) from Harrow & Pell', 'counter@harrow.example', 'Natural or laboratory-grown?', '27 Nov 2026',
    'M. Okafor-Lindqvist', 'Client waits for a call', 'Parcel 1, seal 20931', 'Parcel 2, not sealed', 'C-2026-0117/A', 'round brilliant, bought as natural', 'condition: small chip at the girdle', 'one stone',
    '0.412 ct', '14.321 g', '340 stones', '1 200 EUR', 'not stated', 'returned only against this receipt', 'for Saltmarsh Gem Laboratory', 'Invented demonstration data']) {
    expect(all).toContain(text);
  }
  expect(pdf.alternatives).toContain('QR code that reads C-2026-0117');
  expect(pdf.info).toMatchObject({ Title: 'Receipt for case C-2026-0117' });
});

test('it fits on one page for an ordinary hand-over', async () => {
  expect((await readPdf(await renderReceipt(model))).pages).toHaveLength(1);
});

test('many items go on to further pages under a repeated head', async () => {
  const items = Array.from({ length: 60 }, (_, i) => sampleItem(`A${i}`));
  const view = sampleCase(items);
  const pdf = await readPdf(await renderReceipt(buildReceiptModel(sampleLaboratory(), { ...view, parcels: [{ ...view.parcels[0]!, items }] }, null)));
  expect(pdf.pages.length).toBeGreaterThan(1);
  for (const page of pdf.pages.filter((text) => /C-2026-0117\/A\d/.test(text))) expect(page).toContain('Item Declared as Stones Gross weight Declared value');
  expect(pdf.pages.at(-1)).toContain('returned only against this receipt');
});

test('what was not said is not left open', async () => {
  const bare = sampleCase([sampleItem('A', { grossWeight: null, declaredValue: '', condition: '' })]);
  const pdf = await readPdf(await renderReceipt(buildReceiptModel(sampleLaboratory(), { ...bare, dueOn: null, remarks: '' }, null)));
  for (const text of ['no date agreed', 'not weighed', 'not stated']) expect(pdf.pages.join(' ')).toContain(text);
});

test('the same case gives the same bytes', async () => {
  expect(Buffer.from(await renderReceipt(model)).equals(Buffer.from(await renderReceipt(model)))).toBe(true);
});
