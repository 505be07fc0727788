import type { LaboratoryView } from '../contract/casebook.ts';
import type { ItemView } from '../contract/cases.ts';
import type { CustodyView } from '../contract/custody.ts';
import { err, ok, type Result } from '../result.ts';
import { weightText } from './content/weight-text.ts';
import { dayWords, localTime } from './content/local-time.ts';
import { custodyWeighing } from './custody-words.ts';
import type { HandOverModel } from './hand-over-model.ts';
import { grossWeightWords, itemNumber } from './item-words.ts';

export type HandOverLine = {
  readonly entry: CustodyView;
  readonly item: Pick<ItemView, 'declared' | 'declaredValue' | 'grossWeight' | 'weightUnit'>;
  /** The seal it was under at that entry. */
  readonly seal: string;
  /** The newest weighing of the item up to that entry; null: none is on record. */
  readonly lastWeight: { readonly weight: number; readonly unit: 'ct' | 'g' } | null;
};

const TITLES = { 'handed-over': 'Hand-over', 'taken-back': 'Taken back', returned: 'Return to the client' } as const;
type Changing = keyof typeof TITLES;
const changesHands = (event: string): event is Changing => event in TITLES;

/** Wording customary on hand-over forms: common practice, no source. */
const CONDITIONS: Readonly<Record<Changing, readonly string[]>> = {
  'handed-over': ['Who takes the items has compared them with this list, seals and numbers included, and answers for them until they are handed back.', 'A seal is opened only by agreement. What looks different from this list is written on it before both sign.'],
  'taken-back': ['Who takes the items back has compared them with the list of the hand-over, seals and numbers included.', 'What looks different is written on this form before both sign.'],
  returned: ['The client has compared the items with the receipt and takes them back. The receipt is given up or crossed out.', 'What looks different is written on this form before both sign.'],
};

/** The form for entries of one hand-over, or why they do not belong on one: {@link HandOverLine} in the ledger's order, at least one. */
export function buildHandOver(laboratory: LaboratoryView, logo: HandOverModel['laboratory']['logo'], lines: readonly HandOverLine[]): Result<HandOverModel, string> {
  const first = lines[0]?.entry;
  if (first === undefined || !changesHands(first.content.event)) return err('A form is printed for a hand-over, a taking back or a return.');
  const same = lines.every(({ entry: { content } }) => content.event === first.content.event && content.from === first.content.from && content.to === first.content.to);
  if (!same) return err('One form shows one hand-over: the same giver and the same taker.');
  const { content } = first;
  return ok({
    schema: 'culet-hand-over-1', language: 'en', demonstration: laboratory.isDemonstration, pageSize: laboratory.settings.pageSize,
    laboratory: { name: laboratory.name, address: laboratory.address, zone: laboratory.zone, logo },
    title: TITLES[first.content.event], from: content.from ?? '', to: content.to ?? '', purpose: content.purpose ?? '', dueBack: content.dueBack === undefined ? '' : dayWords(content.dueBack),
    at: localTime(first.at, laboratory.zone), madeAt: first.at,
    items: lines.map(({ entry, item, seal, lastWeight }) => ({
      number: itemNumber(entry.caseNumber, entry.itemLabel), declared: item.declared, declaredValue: item.declaredValue, seal,
      weight: custodyWeighing(entry.content) || (lastWeight === null ? grossWeightWords(item) : weightText(lastWeight.weight, lastWeight.unit)), differs: entry.content.differs === true, remark: entry.content.note ?? '', entry: entry.seq, hash: entry.hash,
    })),
    conditions: [...CONDITIONS[first.content.event]],
  });
}
