import type { LaboratoryView } from '../contract/casebook.ts';
import type { CaseView } from '../contract/cases.ts';
import { ITEM_KIND_WORDS, itemNumber, stoneCountWords, weightWords } from './item-words.ts';
import type { LabelsModel } from './labels-model.ts';
import { dayInWords } from './zoned-time.ts';

/** One label for each item of a case. The seal is the one the item lies under now, or its parcel's. */
export function buildLabelsModel(laboratory: LaboratoryView, view: CaseView): LabelsModel {
  const received = dayInWords(view.receivedAt, laboratory.zone);
  return {
    schema: 'culet-labels-1', language: 'en', demonstration: laboratory.isDemonstration, pageSize: laboratory.settings.pageSize,
    laboratory: laboratory.name, caseNumber: view.number, receivedAt: view.receivedAt,
    labels: view.parcels.flatMap((parcel) => parcel.items.map((item) => ({
      number: itemNumber(view.number, item.label),
      description: [ITEM_KIND_WORDS[item.kind], stoneCountWords(item), weightWords(item.grossWeight, item.weightUnit)].filter((text) => text !== '').join(', '),
      seal: item.custody.seal === '' ? parcel.sealNumber : item.custody.seal, received,
    }))),
  };
}
