import { addDays, dayInZone } from '../../app/custody/calendar.ts';

const isWorkingDay = (day: string): boolean => {
  const weekday = new Date(`${day}T00:00:00.000Z`).getUTCDay();
  return weekday !== 0 && weekday !== 6;
};

/**
 * The calendar date so many working days (Monday to Friday) from another; 0 is that date itself, or the next Monday on a weekend.
 * @param from yyyy-mm-dd
 */
export function workingDay(from: string, offset: number): string {
  let day = from;
  while (offset >= 0 && !isWorkingDay(day)) day = addDays(day, 1);
  const step = offset < 0 ? -1 : 1;
  for (let left = Math.abs(offset); left > 0;) {
    day = addDays(day, step);
    if (isWorkingDay(day)) left -= 1;
  }
  return day;
}

/** Making a formatter takes longer than using it a hundred times. */
const clocks = new Map<string, Intl.DateTimeFormat>();

function clockOf(zone: string): Intl.DateTimeFormat {
  const known = clocks.get(zone);
  if (known !== undefined) return known;
  const clock = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone, calendar: 'gregory', numberingSystem: 'latn', hourCycle: 'h23',
    year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit',
  });
  clocks.set(zone, clock);
  return clock;
}

/** Minutes by which the clocks of a zone are ahead of UTC at an instant. */
function offsetMinutes(instant: Date, zone: string): number {
  const parts = new Map(clockOf(zone).formatToParts(instant).map((part) => [part.type, Number(part.value)]));
  const local = Date.UTC(parts.get('year')!, parts.get('month')! - 1, parts.get('day')!, parts.get('hour')!, parts.get('minute')!, parts.get('second')!);
  return Math.round((local - instant.getTime()) / 60_000);
}

/** The instant of a time of day (HH:MM) in a zone. Where a clock change skips that time, an hour beside it. */
export function instantAt(day: string, time: string, zone: string): Date {
  const asIfUtc = Date.parse(`${day}T${time}:00.000Z`);
  const guess = new Date(asIfUtc - offsetMinutes(new Date(asIfUtc), zone) * 60_000);
  return new Date(asIfUtc - offsetMinutes(guess, zone) * 60_000);
}

/** Turns the relative days of a scenario into instants. */
export function scenarioCalendar(now: Date, zone: string) {
  const today = dayInZone(now.toISOString(), zone);
  return {
    instant: (when: { readonly day: number; readonly at: string }): Date => instantAt(workingDay(today, when.day), when.at, zone),
    due: (offset: number): string => workingDay(today, offset),
  };
}
