import { observation, type Observation, type ObservedMethod } from '../../app/domain/observation.ts';
import { readNumber } from '../look/read-number.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { OBSERVATION_FIELDS } from './observation-fields.ts';

/** What is filled in so far; choices by value, numbers as typed. */
export type ObservationDraft = { readonly choices: Readonly<Record<string, string>>; readonly many: Readonly<Record<string, readonly string[]>>; readonly numbers: Readonly<Record<string, string>> };
export const EMPTY_OBSERVATION: ObservationDraft = { choices: {}, many: {}, numbers: {} };

export const isEmptyObservation = (draft: ObservationDraft): boolean =>
  Object.keys(draft.choices).length === 0 && Object.values(draft.many).every((list) => list.length === 0) && Object.values(draft.numbers).every((text) => text.trim() === '');

/** A stone that does not glow has no colour, and one without a colour does not glow. */
export function chooseIn(draft: ObservationDraft, key: string, value: string): ObservationDraft {
  const choices: Record<string, string> = { ...draft.choices, [key]: value };
  if (key === 'strength' && value === 'inert') choices['colour'] = 'none';
  if (key === 'strength' && value !== 'inert' && choices['colour'] === 'none') delete choices['colour'];
  if (key === 'colour' && value === 'none') choices['strength'] = 'inert';
  if (key === 'colour' && value !== 'none' && choices['strength'] === 'inert') delete choices['strength'];
  return { ...draft, choices };
}

/** 'nothing seen' excludes the rest. */
export function toggleIn(draft: ObservationDraft, key: string, value: string): ObservationDraft {
  const before = draft.many[key] ?? [];
  const without = before.filter((other) => other !== value && other !== 'nothing-seen');
  const after = before.includes(value) ? before.filter((other) => other !== value) : value === 'nothing-seen' ? [value] : [...without, value];
  return { ...draft, many: { ...draft.many, [key]: after } };
}

/** The observation, or a sentence for each field that is open or wrong. */
export function finishObservation(method: ObservedMethod, draft: ObservationDraft, note: string): Result<Observation, Readonly<Record<string, string>>> {
  const faults: Record<string, string> = {};
  const values: Record<string, unknown> = { method };
  const inert = draft.choices['strength'] === 'inert';
  for (const field of OBSERVATION_FIELDS[method]) {
    if (field.kind === 'choice') {
      const value = draft.choices[field.key];
      if (value === undefined) faults[field.key] = field.missing;
      else values[field.key] = value;
    } else if (field.kind === 'many') {
      const list = draft.many[field.key] ?? [];
      if (list.length === 0) faults[field.key] = field.missing;
      else values[field.key] = list;
    } else {
      const number = readNumber(draft.numbers[field.key] ?? '');
      if (number === undefined && field.key === 'seconds' && inert) values[field.key] = 0;
      else if (number === undefined && field.missing !== null) faults[field.key] = field.missing;
      else if (number !== undefined && !(number >= field.least && number <= field.most)) faults[field.key] = `Write a number from ${field.least} to ${field.most}.`;
      else if (number !== undefined) values[field.key] = number;
    }
  }
  if (Object.keys(faults).length > 0) return err(faults);
  const parsed = observation.safeParse({ ...values, ...(note.trim() === '' ? {} : { note: note.trim() }) });
  return parsed.success ? ok(parsed.data) : err(Object.fromEntries(parsed.error.issues.map((issue) => [String(issue.path[0] ?? 'note'), issue.message])));
}
