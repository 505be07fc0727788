import type { IntakeInput } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { dayInZone } from '../../app/custody/calendar.ts';
import { caseNumber } from '../../app/custody/case-number.ts';
import { checkIntake } from '../../app/custody/check-intake.ts';
import { itemLabel } from '../../app/custody/item-label.ts';
import { gramsToCarats, gramUnits } from '../../app/domain/weight.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { appendCustody } from '../ledger/append-custody.ts';
import { ledgerHead } from '../ledger/ledger-head.ts';
import { caseRecord, item as itemTable, parcel as parcelTable } from '../schema/index.ts';
import { clientById, insertClient } from './clients.ts';
import { insertPhotograph } from './insert-photograph.ts';
import { insertStone, type StoneFacts } from './insert-stone.ts';
import { theLaboratory } from './laboratory.ts';
import { nextNumber } from './numbers.ts';
import { personById } from './people.ts';
import { invalidFields, notFound } from './refusals.ts';

type Parcel = IntakeInput['parcels'][number];
type Item = Parcel['items'][number];
type PersonChange = Change & { readonly personId: string };
type Counter = { readonly client: string; readonly person: string; readonly place: string; readonly from: string };
type Context = { readonly tx: WriteTx; readonly deps: { newId(): string }; readonly change: PersonChange; readonly caseId: string; readonly counter: Counter };

export type TakenIn = { readonly caseId: string; readonly number: string };

/** A loose stone is its item: where no stone was written for it, the item's weight is the stone's. */
function stonesOf(item: Item): readonly StoneFacts[] {
  if (item.kind !== 'loose') return item.stones;
  const gross = item.grossWeight === null ? null : item.weightUnit === 'ct' ? item.grossWeight : gramsToCarats(gramUnits(item.grossWeight));
  const [only] = item.stones;
  if (only) return [{ ...only, weight: only.weight ?? gross }];
  return [{ position: '', shape: '', measurements: '', colourClass: 'unknown', weight: gross }];
}

function custodyOnArrival({ tx, change, caseId, counter }: Context, itemId: string, item: Item, sealNumber: string): void {
  const append = (content: Parameters<typeof appendCustody>[2]['content']): void => { appendCustody(tx, change, { caseId, itemId, content }); };
  append({ event: 'received', from: counter.from, to: counter.person, place: counter.place });
  if (item.grossWeight !== null) append({ event: 'weighed', weight: item.grossWeight, weightUnit: item.weightUnit });
  if (sealNumber !== '') append({ event: 'sealed', seal: sealNumber });
  if (item.photographs.length > 0) append({ event: 'photographed', note: item.photographs.length === 1 ? 'one photograph' : `${item.photographs.length} photographs` });
}

function takeInItem(context: Context, item: Item, parcel: { id: string; sealNumber: string }, label: string) {
  const { tx, deps, change, caseId } = context;
  const itemId = deps.newId();
  const { kind, declared, declaredValue, grossWeight, weightUnit, setting, condition } = item;
  const count = kind === 'lot' ? item.count : null;
  tx.orm.insert(itemTable).values({ id: itemId, caseId, parcelId: parcel.id, label, kind, declared, declaredValue, grossWeight, weightUnit, count, setting, condition }).run();
  const stones = stonesOf(item).map((facts) => ({
    ...insertStone(tx, deps.newId(), { caseId, itemId, itemLabel: label }, { ...facts, mounted: kind === 'jewellery' }), ...facts,
  }));
  const photographs = item.photographs.map((photo) => insertPhotograph(tx, deps, change, { caseId, itemId, stoneId: null }, photo).sha256);
  custodyOnArrival(context, itemId, item, parcel.sealNumber);
  return { id: itemId, label, kind, declared, declaredValue, grossWeight, weightUnit, count, setting, condition, stones, photographs };
}

function takeInParcels(context: Context, parcels: readonly Parcel[]) {
  let items = 0;
  return parcels.map((parcel, p) => {
    const id = context.deps.newId();
    const sealNumber = parcel.sealNumber.trim();
    context.tx.orm.insert(parcelTable).values({ id, caseId: context.caseId, ordinal: p + 1, sealNumber, remarks: parcel.remarks }).run();
    return { id, sealNumber, remarks: parcel.remarks, items: parcel.items.map((item) => takeInItem(context, item, { id, sealNumber }, itemLabel(items++))) };
  });
}

function clientOf(tx: WriteTx, newId: () => string, change: Change, given: IntakeInput['client']): { id: string; name: string } | null {
  if ('existing' in given) return clientById(tx, given.existing);
  return { id: insertClient(tx, change, newId(), given), name: given.name };
}

/**
 * Writes one hand-over inside the caller's transaction: client, case with the next number of the year, parcels, items, stones,
 * photographs, the first custody entries of every item, and the audit entry.
 * Refuses with sentences beside the fields where the entries do not fit together. Throws where the change names nobody of this casebook.
 */
export function takeIn(tx: WriteTx, deps: { newId(): string }, change: PersonChange, input: IntakeInput): Result<TakenIn, Failure> {
  const today = dayInZone(change.at, theLaboratory(tx).zone);
  const fields = checkIntake(input, today);
  if (Object.keys(fields).length > 0) return invalidFields(fields);
  const person = personById(tx, change.personId);
  if (!person) throw new Error('takeIn: the person is not in this casebook');
  const client = clientOf(tx, () => deps.newId(), change, input.client);
  if (!client) return notFound('That client');
  const year = Number(today.slice(0, 4));
  const number = caseNumber(year, nextNumber(tx, 'case', year));
  const caseId = deps.newId();
  const { asks, dueOn, remarks, place, broughtBy } = input;
  tx.orm.insert(caseRecord).values({
    id: caseId, number, clientId: client.id, receivedAt: change.at, dueOn, asks, remarks, state: 'open', createdBy: person.id, createdAt: change.at,
  }).run();
  const from = broughtBy.trim() === '' ? client.name : `${broughtBy.trim()}, for ${client.name}`.slice(0, FROM_LENGTH);
  const parcels = takeInParcels({ tx, deps, change, caseId, counter: { client: client.name, person: person.name, place, from } }, input.parcels);
  appendAudit(tx, change, { subject: number, caseId, content: { number, client: client.id, asks, dueOn, remarks, place, broughtBy, parcels, custody: ledgerHead(tx, 'custody_entry')! } });
  return ok({ caseId, number });
}

/** Longest "from" of a custody entry, as in app/domain/custody-event.ts. */
const FROM_LENGTH = 200;
