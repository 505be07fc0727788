const formats = new Map<string, Intl.DateTimeFormat>();

function partsOf(instant: string, zone: string): ReadonlyMap<string, string> {
  let format = formats.get(zone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone, calendar: 'gregory', numberingSystem: 'latn', hourCycle: 'h23',
      year: 'numeric', month: 'numeric', day: 'numeric', hour: '2-digit', minute: '2-digit',
    });
    formats.set(zone, format);
  }
  return new Map(format.formatToParts(new Date(instant)).map((part) => [part.type, part.value]));
}

/** Written out here and not by the machine's language data, so that every machine prints the same. */
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

const dateWords = (day: number, month: number, year: string): string => `${day} ${MONTHS[month - 1]?.slice(0, 3) ?? '?'} ${year}`;

/** "25 Nov 2026" for an instant (UTC, ISO 8601) in a zone of the IANA database. Throws a RangeError on an unknown zone. */
export function dayInWords(instant: string, zone: string): string {
  const parts = partsOf(instant, zone);
  return dateWords(Number(parts.get('day')), Number(parts.get('month')), parts.get('year') ?? '');
}

/** "25 November 2026", for the line of issue. */
export function longDayInWords(instant: string, zone: string): string {
  const parts = partsOf(instant, zone);
  return `${Number(parts.get('day'))} ${MONTHS[Number(parts.get('month')) - 1] ?? '?'} ${parts.get('year') ?? ''}`;
}

/** "25 Nov 2026 09:14". */
export function momentInWords(instant: string, zone: string): string {
  const parts = partsOf(instant, zone);
  return `${dayInWords(instant, zone)} ${parts.get('hour') ?? ''}:${parts.get('minute') ?? ''}`;
}

/** "25 Nov 2026" for a calendar date (yyyy-mm-dd), which has no zone. */
export function calendarDayInWords(day: string): string {
  const [year = '', month = '', date = ''] = day.split('-');
  return dateWords(Number(date), Number(month), year);
}
