/** Times are kept in UTC and shown in the laboratory's zone. */
const formats = new Map<string, Intl.DateTimeFormat>();

function format(zone: string, key: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const name = `${zone} ${key}`;
  let found = formats.get(name);
  if (!found) {
    found = new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...options });
    formats.set(name, found);
  }
  return found;
}

/** "25 Nov 2026" */
export const showDay = (instant: string, zone: string) => format(zone, 'day', { day: 'numeric', month: 'short', year: 'numeric' }).format(new Date(instant));
/** "25 Nov" */
export const showShortDay = (instant: string, zone: string) => format(zone, 'short', { day: 'numeric', month: 'short' }).format(new Date(instant));
/** "09:41" */
export const showClock = (instant: string, zone: string) => format(zone, 'clock', { hour: '2-digit', minute: '2-digit', hour12: false }).format(new Date(instant));
/** "25 Nov 2026, 09:41" */
export const showMoment = (instant: string, zone: string) => `${showDay(instant, zone)}, ${showClock(instant, zone)}`;
/** "25 Nov 2026" from a calendar date */
export const showDate = (day: string) => showDay(`${day}T12:00:00Z`, 'UTC');
/** "Wednesday 25 November" from a calendar date */
export const showLongDate = (day: string) => new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', weekday: 'long', day: 'numeric', month: 'long' }).format(new Date(`${day}T12:00:00Z`)).replace(',', '');

const MS_PER_DAY = 86_400_000;
/** Calendar date beside today, as people say it: "2 days late", "today", "Friday", "12 Dec". */
export function showDue(due: string, today: string): string {
  const days = Math.round((Date.parse(`${due}T00:00:00Z`) - Date.parse(`${today}T00:00:00Z`)) / MS_PER_DAY);
  if (days < 0) return days === -1 ? '1 day late' : `${-days} days late`;
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  const date = new Date(`${due}T12:00:00Z`);
  if (days < 7) return new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', weekday: 'long' }).format(date);
  return new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', day: 'numeric', month: 'short' }).format(date);
}

/** "a41f…9c02" */
export const shortDigest = (digest: string) => `${digest.slice(0, 4)}…${digest.slice(-4)}`;
