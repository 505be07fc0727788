import type { LaboratoryView } from '../contract/casebook.ts';
import type { CaseView } from '../contract/cases.ts';
import { KIND_WORDS } from './content/item-part.ts';
import { localDate } from './content/local-time.ts';
import { grossWeightWords, itemNumber, stoneCountWords } from './item-words.ts';
import type { LabelsModel } from './labels-model.ts';

/** One label for each item of a case. The seal is the one the item lies under now, or its parcel's. */
export function buildLabelsModel(laboratory: LaboratoryView, view: CaseView): LabelsModel {
  const received = localDate(view.receivedAt, laboratory.zone);
  return {
    schema: 'culet-labels-1', language: 'en', demonstration: laboratory.isDemonstration, pageSize: laboratory.settings.pageSize,
    laboratory: laboratory.name, caseNumber: view.number, receivedAt: view.receivedAt,
    labels: view.parcels.flatMap((parcel) => parcel.items.map((item) => ({
      number: itemNumber(view.number, item.label),
      description: [KIND_WORDS[item.kind], item.kind === 'loose' && (item.count ?? 1) === 1 ? '' : stoneCountWords(item), grossWeightWords(item)].filter((text) => text !== '').join(', '),
      seal: item.custody.seal === '' ? parcel.sealNumber : item.custody.seal, received,
    }))),
  };
}
