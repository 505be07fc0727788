import type { CustodyContent, CustodyEvent } from '../domain/custody-event.ts';
import { err, ok, type Result } from '../result.ts';
import { compareWeight } from './compare-weight.ts';
import type { CurrentCustody } from './current-custody.ts';

export type CustodyRequest = {
  readonly event: Exclude<CustodyEvent, 'received' | 'tested' | 'photographed'>;
  readonly from?: string | undefined; readonly to?: string | undefined; readonly place?: string | undefined; readonly seal?: string | undefined;
  readonly weight?: number | undefined; readonly note?: string | undefined;
};

/** What the entry is judged against. */
export type CustodyCircumstances = {
  readonly label: string;
  readonly current: CurrentCustody;
  readonly weightUnit: 'ct' | 'g';
  /** In steps of weightUnit. */
  readonly tolerance: number;
  readonly clientName: string;
};

export type CustodyRefusal =
  | { readonly code: 'gone'; readonly message: string; readonly next: string }
  | { readonly code: 'incomplete'; readonly fields: Readonly<Record<string, string>> };

const filled = (text: string | undefined): string | undefined => (text !== undefined && text.trim() !== '' ? text.trim() : undefined);

const REQUIRED: Readonly<Record<CustodyRequest['event'], { field: 'weight' | 'seal' | 'place' | 'to'; sentence: string } | null>> = {
  weighed: { field: 'weight', sentence: 'Write what the balance shows.' },
  sealed: { field: 'seal', sentence: 'Write the number of the seal.' },
  moved: { field: 'place', sentence: 'Write where it is put now.' },
  'handed-over': { field: 'to', sentence: 'Write who takes it.' },
  opened: null,
  returned: null,
};

/** What does not fit the entries before: it is recorded all the same, since it happened, and the entry says so. */
function oddities(request: CustodyRequest, { current }: CustodyCircumstances): string[] {
  const seal = filled(request.seal);
  if (request.event === 'opened') {
    if (current.seal === '') return ['No seal was on record when it was opened.'];
    if (seal !== undefined && seal !== current.seal) return [`The seal on record was ${current.seal}.`];
  }
  if (request.event === 'sealed' && current.seal !== '') return [`It was on record as under seal ${current.seal}, whose opening was not recorded.`];
  if (request.event === 'weighed' && current.seal !== '') return [`Weighed under seal ${current.seal}.`];
  return [];
}

/** What a test's entry must say where no opening was recorded; undefined where nothing is odd. */
export const testedUnderSeal = (seal: string): string | undefined => (seal === '' ? undefined : `It was on record as under seal ${seal}, whose opening was not recorded.`);

/** Parts as one text, each ended like a sentence where another follows. */
function sentences(parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined).map((part, i, all) => (i < all.length - 1 && !/[.!?…]$/.test(part) ? `${part}.` : part)).join(' ');
}

type WeighedPart = { readonly content: Partial<CustodyContent>; readonly says: string | undefined };

function weightPart(request: CustodyRequest, c: CustodyCircumstances): WeighedPart {
  if (request.weight === undefined) return { content: {}, says: undefined };
  const weight = request.weight;
  const against = (one: CurrentCustody['lastWeight']) => (one !== null && one.unit === c.weightUnit ? compareWeight(weight, one.weight, c.tolerance) : null);
  const last = against(c.current.lastWeight);
  const first = against(c.current.firstWeight);
  // Small losses add up: what goes out answers to what came in, and so does every weighing that agrees with the one before.
  const answersToFirst = first !== null && (request.event === 'returned' || (last?.differs !== true && first.differs));
  const compared = answersToFirst ? first : last;
  const weighedTwice = c.current.firstWeight !== c.current.lastWeight;
  return { content: { weight, weightUnit: c.weightUnit, ...compared }, says: answersToFirst && weighedTwice ? COMPARED_WITH_FIRST : undefined };
}

/** Which weight the reading answers to, where it is not the last one. */
const COMPARED_WITH_FIRST = 'Compared with the first weight on record, not with the last.';

/**
 * The content of the next custody entry of an item, or why there can be none.
 * A weight is compared with the last recorded one and with the first, in the same unit; what goes back to the client, with the first. What does not fit the record is written into the note.
 */
export function nextCustody(request: CustodyRequest, c: CustodyCircumstances): Result<CustodyContent, CustodyRefusal> {
  if (c.current.returned) {
    return err({ code: 'gone', message: `${c.label} was returned to the client; its custody is closed.`, next: 'If it comes back, take it in as a new case.' });
  }
  const required = REQUIRED[request.event];
  if (required && (required.field === 'weight' ? request.weight === undefined : filled(request[required.field]) === undefined)) {
    return err({ code: 'incomplete', fields: { [required.field]: required.sentence } });
  }
  const weighed = weightPart(request, c);
  const note = sentences([filled(request.note), ...oddities(request, c), weighed.says]).slice(0, NOTE_LENGTH);
  const seal = filled(request.seal) ?? (request.event === 'opened' && c.current.seal !== '' ? c.current.seal : undefined);
  const from = filled(request.from) ?? (request.event === 'handed-over' || request.event === 'returned' ? filled(c.current.holder) : undefined);
  const to = filled(request.to) ?? (request.event === 'returned' ? c.clientName : undefined);
  const place = filled(request.place);
  return ok({
    event: request.event,
    ...(from !== undefined && { from }), ...(to !== undefined && { to }), ...(place !== undefined && { place }), ...(seal !== undefined && { seal }),
    ...weighed.content, ...(note !== '' && { note }),
  });
}

/** Longest note of an entry, as in app/domain/custody-event.ts. */
const NOTE_LENGTH = 2000;
