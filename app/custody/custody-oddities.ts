import type { WrittenEvent } from '../domain/custody-event.ts';
import type { CurrentCustody } from './current-custody.ts';

type Told = { readonly event: WrittenEvent; readonly weight?: number | undefined; readonly seal: string | undefined; readonly place: string | undefined };

/** What a test's entry must say where no opening was recorded; undefined where nothing is odd. */
export const testedUnderSeal = (seal: string): string | undefined => (seal === '' ? undefined : `It was on record as under seal ${seal}, whose opening was not recorded.`);

function sealOddities({ event, seal }: Told, current: CurrentCustody): string[] {
  if (event === 'opened') {
    if (current.seal === '') return ['No seal was on record when it was opened.'];
    if (seal !== undefined && seal !== current.seal) return [`The seal on record was ${current.seal}.`];
  }
  if (event === 'sealed' && current.seal !== '') return [`It was on record as under seal ${current.seal}, whose opening was not recorded.`];
  if (event === 'weighed' && current.seal !== '') return [`Weighed under seal ${current.seal}.`];
  if ((event === 'taken-back' || event === 'seen') && seal !== undefined && seal !== current.seal) return [current.seal === '' ? 'No seal was on record.' : `The seal on record was ${current.seal}.`];
  return [];
}

/** What can't be done to a thing that is elsewhere. */
const AT_HAND: ReadonlySet<WrittenEvent> = new Set(['weighed', 'sealed', 'opened', 'moved', 'seen']);

function whereaboutsOddities({ event, place }: Told, current: CurrentCustody): string[] {
  if (event === 'taken-back' && current.out === null) return ['It was not on record as out of the house.'];
  if (current.out !== null && AT_HAND.has(event)) return [`It was on record as out with ${current.out.to}, whose handing back was not recorded.`];
  if (event === 'seen' && place !== undefined && current.place !== '' && place !== current.place) return [`The place on record was ${current.place}.`];
  return [];
}

/** What goes back answers to what came in; where nobody looked, the entry says so. */
const unweighed = ({ event, weight }: Told, current: CurrentCustody): string[] => (event === 'returned' && weight === undefined && current.firstWeight !== null ? ['It was not weighed when it went back.'] : []);

/** What does not fit the entries before: it is recorded all the same, since it happened, and the entry says so. */
export function custodyOddities(told: Told, current: CurrentCustody): string[] {
  return [...sealOddities(told, current), ...whereaboutsOddities(told, current), ...unweighed(told, current)];
}
