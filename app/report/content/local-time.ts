const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

const formatters = new Map<string, Intl.DateTimeFormat>();

function formatter(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone, calendar: 'gregory', numberingSystem: 'latn', hourCycle: 'h23',
    year: 'numeric', month: 'numeric', day: 'numeric', hour: '2-digit', minute: '2-digit',
  });
  formatters.set(zone, made);
  return made;
}

type Parts = { readonly day: string; readonly month: string; readonly year: string; readonly time: string };

/** The words are put together here and not by Intl, whose wording changes between versions. */
function partsOf(instant: string, zone: string): Parts {
  const parts = new Map(formatter(zone).formatToParts(new Date(instant)).map((part) => [part.type, part.value]));
  const part = (name: Intl.DateTimeFormatPartTypes): string => parts.get(name) ?? '';
  return { day: String(Number(part('day'))), month: MONTHS[Number(part('month')) - 1] ?? '', year: part('year'), time: `${part('hour')}:${part('minute')}` };
}

/** "20 Nov 2026" for a UTC instant, in the laboratory's zone. */
export function localDate(instant: string, zone: string): string {
  const { day, month, year } = partsOf(instant, zone);
  return `${day} ${month} ${year}`;
}

/** "20 Nov 2026" for a day of the calendar, YYYY-MM-DD: it has no zone. */
export const dayWords = (day: string): string => localDate(`${day}T12:00:00.000Z`, 'UTC');

/** "20 Nov 2026, 14:05" for a UTC instant, in the laboratory's zone. */
export function localTime(instant: string, zone: string): string {
  return `${localDate(instant, zone)}, ${partsOf(instant, zone).time}`;
}

/** "24 – 25 Nov 2026", or one date where all instants fall on it; empty without instants. */
export function localSpan(instants: readonly string[], zone: string): string {
  const sorted = [...instants].sort();
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return '';
  const from = partsOf(first, zone);
  const to = partsOf(last, zone);
  const end = `${to.day} ${to.month} ${to.year}`;
  if (from.year !== to.year) return `${from.day} ${from.month} ${from.year} – ${end}`;
  if (from.month !== to.month) return `${from.day} ${from.month} – ${end}`;
  return from.day === to.day ? end : `${from.day} – ${end}`;
}
