import type { z } from 'zod';
import { intakeInput, type IntakeInput } from '../../app/contract/cases.ts';
import { gramsToCarats, gramUnits, parseCarat, parseGram } from '../../app/domain/weight.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { IntakeForm, ItemForm } from './intake-state.ts';

/** Path of a field, joined by dots as the contract names it, and the sentence that stands beside it. */
export type FieldSentences = Readonly<Record<string, string>>;

type ItemInput = IntakeInput['parcels'][number]['items'][number];

function readCount(text: string): number {
  return /^\d{1,7}$/.test(text.trim()) ? Number(text.trim()) : Number.NaN;
}

/** One item as the contract takes it; what can't be read is written into `wrong` under its path. */
function itemToInput(item: ItemForm, path: string, wrong: Record<string, string>): ItemInput {
  const parse = item.weightUnit === 'ct' ? parseCarat : parseGram;
  let gross: number | null = null;
  if (item.grossWeight.trim() !== '') {
    const weight = parse(item.grossWeight);
    if (weight.ok) gross = weight.value;
    else wrong[`${path}.grossWeight`] = weight.error;
  }
  let count: number | null = null;
  if (item.kind === 'lot' && item.count.trim() !== '') {
    count = readCount(item.count);
    if (Number.isNaN(count)) { wrong[`${path}.count`] = 'Write the number of stones in digits.'; count = null; }
  }
  if (item.kind === 'jewellery' && item.setting === '') wrong[`${path}.setting`] = 'Say whether the back is open or closed: it decides which tests are possible.';
  const stones = item.stones.map((stone, s) => {
    let weight: number | null = null;
    if (item.kind === 'loose') weight = gross === null ? null : item.weightUnit === 'ct' ? gross : gramsToCarats(gramUnits(gross));
    else if (item.kind === 'lot' && stone.weight.trim() !== '') {
      const read = parseCarat(stone.weight);
      if (read.ok) weight = read.value;
      else wrong[`${path}.stones.${s}.weight`] = read.error;
    }
    return { position: stone.position, shape: stone.shape, measurements: stone.measurements, colourClass: stone.colourClass, weight };
  });
  return {
    kind: item.kind, declared: item.declared, declaredValue: item.declaredValue, grossWeight: gross, weightUnit: item.weightUnit, count,
    setting: item.kind === 'jewellery' && item.setting !== '' ? item.setting : null, condition: item.condition, stones,
    photographs: item.photographs.map(({ name, mediaType, bytes, caption, light }) => ({ name, mediaType, bytes, caption, light })),
  };
}

/** The form as the contract takes it, or a sentence for every field that is wrong. */
export function intakeToInput(form: IntakeForm): Result<z.input<typeof intakeInput>, FieldSentences> {
  const wrong: Record<string, string> = {};
  const { existing, ...fresh } = form.client;
  const input: IntakeInput = {
    client: existing !== null ? { existing } : fresh,
    asks: form.asks, dueOn: form.dueOn === '' ? null : form.dueOn, remarks: form.remarks, place: form.place, broughtBy: form.broughtBy,
    parcels: form.parcels.map((parcel, p) => ({
      sealNumber: parcel.sealNumber, remarks: parcel.remarks,
      items: parcel.items.map((item, i) => itemToInput(item, `parcels.${p}.items.${i}`, wrong)),
    })),
  };
  if (existing === null && fresh.name.trim() === '') wrong['client.name'] = 'Choose a client of the list or write a new client’s name.';
  const checked = intakeInput.safeParse(input);
  if (!checked.success) {
    for (const issue of checked.error.issues) {
      // A union has no field of its own; its sentence is the one above.
      if (issue.code === 'invalid_union') continue;
      const path = issue.path.join('.');
      wrong[path] ??= issue.message;
    }
  }
  return Object.keys(wrong).length === 0 ? ok(input) : err(wrong);
}
