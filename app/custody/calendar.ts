const formatters = new Map<string, Intl.DateTimeFormat>();

function formatter(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-GB', { timeZone: zone, calendar: 'gregory', numberingSystem: 'latn', year: 'numeric', month: '2-digit', day: '2-digit' });
  formatters.set(zone, made);
  return made;
}

/** True for names of the IANA time zone database that this machine knows. */
export function isZone(zone: string): boolean {
  try {
    formatter(zone);
    return true;
  } catch {
    return false;
  }
}

/** Calendar date, yyyy-mm-dd, of an instant (UTC ISO 8601) in a laboratory's zone. Throws a RangeError on an unknown zone or a broken instant. */
export function dayInZone(instant: string, zone: string): string {
  const parts = new Map(formatter(zone).formatToParts(new Date(instant)).map((p) => [p.type, p.value]));
  return `${parts.get('year')!.padStart(4, '0')}-${parts.get('month')!}-${parts.get('day')!}`;
}

/** True for yyyy-mm-dd that is a day of the calendar: 2026-02-30 is not. */
export function isDay(day: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day);
  if (!match) return false;
  const date = new Date(Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3])));
  return date.toISOString().slice(0, 10) === day;
}

/** True once an agreed day lies before today, both yyyy-mm-dd; where none was agreed nothing is ever late. */
export const hasPassed = (day: string | null, today: string): boolean => day !== null && day < today;

const MS_PER_DAY = 86_400_000;

/** The calendar date so many days after another. */
export function addDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00.000Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}
