import type { Period } from '../../app/bundle/bundle-documents.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { addDays, isDay } from '../../app/custody/calendar.ts';
import { startOfDay } from '../../app/custody/zone-instant.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { casesReceived, type CaseToBundle } from '../../db/store/bundle-records.ts';
import { notFound } from '../services/failures.ts';

/** The cases that were received on the days of a period, both counted in, as the laboratory's own calendar has them. An empty period is a refusal. */
export async function casesOfPeriod(casebook: Casebook, { from, to }: Period): Promise<Result<CaseToBundle[], Failure>> {
  const wrong = (field: string, message: string) => err<Failure>({ code: 'invalid-input', message, next: 'Write the days as year-month-day, the earlier one first.', fields: { [field]: message } });
  if (!isDay(from)) return wrong('from', `${from} is not a day of the calendar.`);
  if (!isDay(to)) return wrong('to', `${to} is not a day of the calendar.`);
  if (to < from) return wrong('to', `The period ends on ${to}, before it begins on ${from}.`);
  const laboratory = await casebook.laboratory.get();
  if (laboratory === null) return notFound('The laboratory');
  const cases = casesReceived(casebook.handle.read, startOfDay(from, laboratory.zone), startOfDay(addDays(to, 1), laboratory.zone));
  return cases.length > 0 ? ok(cases) : err({ code: 'not-found', message: `No case was received from ${from} to ${to}.`, next: 'Choose other days: what counts is the day on which a case was received.' });
}
