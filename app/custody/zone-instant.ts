import { dayInZone } from './calendar.ts';

const MS_PER_HOUR = 3_600_000;
/** No zone is farther from UTC than 14 hours (IANA time zone database). */
const FARTHEST_HOURS = 15;

/** First instant (UTC ISO 8601) of a calendar day in a zone, to the quarter hour: no zone in use is offset by less. */
export function startOfDay(day: string, zone: string): string {
  let low = Date.parse(`${day}T00:00:00.000Z`) - FARTHEST_HOURS * MS_PER_HOUR;
  let high = Date.parse(`${day}T00:00:00.000Z`) + FARTHEST_HOURS * MS_PER_HOUR;
  const step = MS_PER_HOUR / 4;
  while (high - low > step) {
    const middle = low + Math.floor((high - low) / step / 2) * step;
    if (dayInZone(new Date(middle).toISOString(), zone) < day) low = middle;
    else high = middle;
  }
  return new Date(high).toISOString();
}
