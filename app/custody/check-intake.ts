import type { IntakeInput } from '../contract/cases.ts';
import { gramsToCarats, gramUnits } from '../domain/weight.ts';
import { isDay } from './calendar.ts';
import { checkPicture } from './check-picture.ts';

type Item = IntakeInput['parcels'][number]['items'][number];
type Stone = Item['stones'][number];
/** Path of a field, joined by dots, and the sentence that stands beside it. */
export type FieldSentences = Record<string, string>;

export const MOUNTED_WEIGHT = 'A mounted stone can’t be weighed by itself: leave its weight empty.';

/** Gross weight in 0.0001 ct whatever the balance showed, or null. */
function grossCarat(item: Item): number | null {
  if (item.grossWeight === null) return null;
  return item.weightUnit === 'ct' ? item.grossWeight : gramsToCarats(gramUnits(item.grossWeight));
}

function checkLoose(item: Item, path: string, fields: FieldSentences): void {
  if (item.setting !== null) fields[`${path}.setting`] = 'A loose stone has no setting: choose jewellery, or clear the setting.';
  if (item.stones.length > 1) fields[`${path}.stones`] = 'A loose item is one stone: write an item for each, or choose a lot.';
  if (item.count !== null && item.count !== 1) fields[`${path}.count`] = 'A loose item is one stone: choose a lot for several.';
}

function checkJewellery(item: Item, path: string, fields: FieldSentences): void {
  if (item.setting === null) fields[`${path}.setting`] = 'Say whether the back is open or closed: it decides which tests are possible.';
  if (item.stones.length === 0) fields[`${path}.stones`] = 'Write at least one stone of the piece, and where it sits.';
  if (item.count !== null) fields[`${path}.count`] = 'A piece of jewellery lists its stones: leave the count empty.';
  item.stones.forEach((stone, i) => {
    if (stone.weight !== null) fields[`${path}.stones.${i}.weight`] = MOUNTED_WEIGHT;
    if (item.stones.length > 1 && stone.position.trim() === '') fields[`${path}.stones.${i}.position`] = 'Say where this stone sits, so that it can be found again.';
  });
}

function checkLot(item: Item, path: string, fields: FieldSentences): void {
  if (item.setting !== null) fields[`${path}.setting`] = 'A lot is loose: clear the setting.';
  if (item.count === null) fields[`${path}.count`] = 'Count the stones of the lot.';
  else if (item.stones.length > item.count) fields[`${path}.stones`] = `The lot holds ${item.count} stones, but ${item.stones.length} are listed.`;
}

function checkWeights(stones: readonly Stone[], gross: number | null, path: string, fields: FieldSentences): void {
  if (gross === null) return;
  const sum = stones.reduce((total, stone) => total + (stone.weight ?? 0), 0);
  // A gram reading rounds to 0.00005 ct on each side.
  if (sum > gross + 1) fields[`${path}.grossWeight`] = 'The stones listed weigh more than the whole item.';
}

function checkItem(item: Item, path: string, fields: FieldSentences): void {
  if (item.kind === 'loose') checkLoose(item, path, fields);
  if (item.kind === 'jewellery') checkJewellery(item, path, fields);
  if (item.kind === 'lot') checkLot(item, path, fields);
  checkWeights(item.stones, grossCarat(item), path, fields);
  item.photographs.forEach((photo, i) => {
    const fault = checkPicture(photo.bytes, photo.mediaType);
    if (fault !== null) fields[`${path}.photographs.${i}.bytes`] = fault;
  });
}

/** `today` is the calendar date in the laboratory's zone. */
export function checkDue(dueOn: string | null, today: string): string | null {
  if (dueOn === null) return null;
  if (!isDay(dueOn)) return 'There is no such day in the calendar.';
  return dueOn < today ? 'The due date lies before today.' : null;
}

/**
 * What the form alone can't see: rules between fields of one hand-over. Returns no entries where all fits.
 * `today` is the calendar date in the laboratory's zone, yyyy-mm-dd.
 */
export function checkIntake(input: IntakeInput, today: string): FieldSentences {
  const fields: FieldSentences = {};
  const due = checkDue(input.dueOn, today);
  if (due !== null) fields['dueOn'] = due;
  const seals = new Set<string>();
  input.parcels.forEach((parcel, p) => {
    const seal = parcel.sealNumber.trim();
    if (seal !== '' && seals.has(seal)) fields[`parcels.${p}.sealNumber`] = `Seal ${seal} is written twice in this hand-over.`;
    seals.add(seal);
    parcel.items.forEach((item, i) => { checkItem(item, `parcels.${p}.items.${i}`, fields); });
  });
  return fields;
}
