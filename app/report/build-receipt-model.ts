import type { LaboratoryView } from '../contract/casebook.ts';
import type { CaseView } from '../contract/cases.ts';
import { KIND_WORDS } from './content/item-part.ts';
import { dayWords, localTime } from './content/local-time.ts';
import { grossWeightWords, itemNumber, stoneCountWords } from './item-words.ts';
import type { ReceiptModel } from './receipt-model.ts';

/** Wording customary on laboratories' receipts: common practice, no source. */
export const RECEIPT_CONDITIONS = [
  'The items are returned only against this receipt or on the client’s written order.',
  'Descriptions and values marked as declared are the client’s statements; taking the items in does not confirm them.',
  'Weights are gross weights at the counter. Mounted stones are not taken out of their settings without written order.',
  'What was remarked on the condition of an item at receipt stands beside it.',
] as const;

/** What a client takes home, built from the case as it was taken in. `logo` is the laboratory's, in base64. */
export function buildReceiptModel(laboratory: LaboratoryView, view: CaseView, logo: ReceiptModel['laboratory']['logo']): ReceiptModel {
  const { client } = view;
  return {
    schema: 'culet-receipt-1', language: 'en', demonstration: laboratory.isDemonstration, pageSize: laboratory.settings.pageSize,
    laboratory: { name: laboratory.name, address: laboratory.address, zone: laboratory.zone, logo },
    client: { name: client.name, address: client.address, email: client.email, phone: client.phone },
    caseNumber: view.number, received: localTime(view.receivedAt, laboratory.zone), receivedAt: view.receivedAt, receivedBy: view.createdBy,
    asks: view.asks, due: view.dueOn === null ? '' : dayWords(view.dueOn), remarks: view.remarks,
    parcels: view.parcels.map((parcel) => ({
      heading: `Parcel ${parcel.ordinal}`, seal: parcel.sealNumber, remarks: parcel.remarks,
      items: parcel.items.map((item) => ({
        number: itemNumber(view.number, item.label), kind: KIND_WORDS[item.kind], declared: item.declared, count: stoneCountWords(item),
        weight: grossWeightWords(item), declaredValue: item.declaredValue, condition: item.condition,
      })),
    })),
    conditions: [...RECEIPT_CONDITIONS],
  };
}
