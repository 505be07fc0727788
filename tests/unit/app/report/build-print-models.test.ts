import { describe, expect, test } from 'vitest';
import { buildLabelsModel } from '../../../../app/report/build-labels-model.ts';
import { buildReceiptModel } from '../../../../app/report/build-receipt-model.ts';
import { labelsModel } from '../../../../app/report/labels-model.ts';
import { receiptModel } from '../../../../app/report/receipt-model.ts';
import { sampleCase, sampleItem, sampleLaboratory } from '../../main/print/sample-case.ts';

describe('the receipt of a case', () => {
  const model = buildReceiptModel(sampleLaboratory(), sampleCase(), null);

  test('is a receipt by its own schema', () => {
    expect(receiptModel.parse(model)).toEqual(model);
  });

  test('gives times in the laboratory’s zone and days without one', () => {
    expect(model.received).toBe('21 Nov 2026, 00:30');
    expect(model.due).toBe('27 Nov 2026');
    expect(buildReceiptModel(sampleLaboratory({ zone: 'UTC' }), sampleCase(), null).received).toBe('20 Nov 2026, 23:30');
    expect(buildReceiptModel(sampleLaboratory(), { ...sampleCase(), dueOn: null }, null).due).toBe('');
  });

  test('counts and weighs each kind of item', () => {
    expect(model.parcels.map((parcel) => parcel.items.map((item) => [item.number, item.count, item.weight]))).toEqual([
      [['C-2026-0117/A', 'one stone', '0.412 ct'], ['C-2026-0117/B', 'eleven stones', '14.321 g']], [['C-2026-0117/C', '340 stones', '1.80 ct']],
    ]);
    const uncounted = buildReceiptModel(sampleLaboratory(), sampleCase([sampleItem('A', { kind: 'jewellery', grossWeight: null })]), null);
    expect(uncounted.parcels[0]!.items[0]).toMatchObject({ count: 'stones not counted', weight: '' });
  });
});

describe('the labels of a case', () => {
  test('are labels by their own schema, one for each item', () => {
    const model = buildLabelsModel(sampleLaboratory(), sampleCase());
    expect(labelsModel.parse(model)).toEqual(model);
    expect(model.labels.map((label) => label.number)).toEqual(['C-2026-0117/A', 'C-2026-0117/B', 'C-2026-0117/C']);
  });

  test('name the seal the item lies under now, else its parcel’s', () => {
    const { custody } = sampleItem('A');
    const model = buildLabelsModel(sampleLaboratory(), sampleCase([sampleItem('A', { custody: { ...custody, seal: '20944' } }), sampleItem('B', { custody: { ...custody, seal: '' } })]));
    expect(model.labels.map((label) => label.seal)).toEqual(['20944', '20931']);
  });
});
