import type { CustodyContent, WrittenEvent } from '../domain/custody-event.ts';
import { err, ok, type Result } from '../result.ts';
import { compareWeight } from './compare-weight.ts';
import type { CurrentCustody } from './current-custody.ts';
import { custodyOddities } from './custody-oddities.ts';

export type CustodyRequest = {
  readonly event: WrittenEvent;
  readonly from?: string | undefined; readonly to?: string | undefined; readonly place?: string | undefined; readonly seal?: string | undefined;
  readonly outside?: boolean | undefined; readonly purpose?: string | undefined; readonly dueBack?: string | undefined;
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
  /** Who writes the entry. */
  readonly person: string;
  /** Today in the laboratory's zone, YYYY-MM-DD. */
  readonly today: string;
};

export type CustodyRefusal =
  | { readonly code: 'gone'; readonly message: string; readonly next: string }
  | { readonly code: 'incomplete'; readonly fields: Readonly<Record<string, string>> };

const filled = (text: string | undefined): string | undefined => (text !== undefined && text.trim() !== '' ? text.trim() : undefined);

const REQUIRED: Readonly<Record<WrittenEvent, { field: 'weight' | 'seal' | 'place' | 'to'; sentence: string } | null>> = {
  weighed: { field: 'weight', sentence: 'Write what the balance shows.' },
  sealed: { field: 'seal', sentence: 'Write the number of the seal.' },
  moved: { field: 'place', sentence: 'Write where it is put now.' },
  'handed-over': { field: 'to', sentence: 'Write who takes it.' },
  'taken-back': { field: 'place', sentence: 'Write where it is put now.' },
  seen: null,
  opened: null,
  returned: null,
};

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

/** Sentences beside the fields that can't stand as they are. */
function faultsOf(request: CustodyRequest, c: CustodyCircumstances): Record<string, string> {
  const required = REQUIRED[request.event];
  const faults: Record<string, string> = {};
  if (required && (required.field === 'weight' ? request.weight === undefined : filled(request[required.field]) === undefined)) faults[required.field] = required.sentence;
  const due = filled(request.dueBack);
  if (due !== undefined && due < c.today) faults['dueBack'] = 'That day has passed: write the day by which it is expected back.';
  return faults;
}

/** Giver and taker where the request leaves them out. */
function hands(request: CustodyRequest, c: CustodyCircumstances): { from: string | undefined; to: string | undefined } {
  const changesHands = request.event === 'handed-over' || request.event === 'returned' || request.event === 'taken-back';
  const taker = request.event === 'returned' ? c.clientName : request.event === 'taken-back' ? c.person : undefined;
  return { from: filled(request.from) ?? (changesHands ? filled(c.current.holder) : undefined), to: filled(request.to) ?? taker };
}

/** What a hand-over out of the house says beside its hands. */
function outsidePart(request: CustodyRequest): Partial<CustodyContent> {
  if (request.event !== 'handed-over') return {};
  const purpose = filled(request.purpose);
  const dueBack = filled(request.dueBack);
  return { ...(request.outside === true && { outside: true }), ...(purpose !== undefined && { purpose }), ...(request.outside === true && dueBack !== undefined && { dueBack }) };
}

/**
 * The content of the next custody entry of an item, or why there can be none.
 * A weight is compared with the last recorded one and with the first, in the same unit; what goes back to the client, with the first. What does not fit the record is written into the note.
 */
export function nextCustody(request: CustodyRequest, c: CustodyCircumstances): Result<CustodyContent, CustodyRefusal> {
  if (c.current.returned) {
    return err({ code: 'gone', message: `${c.label} was returned to the client; its custody is closed.`, next: 'If it comes back, take it in as a new case.' });
  }
  const fields = faultsOf(request, c);
  if (Object.keys(fields).length > 0) return err({ code: 'incomplete', fields });
  const weighed = weightPart(request, c);
  const place = filled(request.place) ?? (request.event === 'seen' ? filled(c.current.place) : undefined);
  const odd = sentences([...custodyOddities({ ...request, seal: filled(request.seal), place }, c.current), weighed.says]);
  const note = sentences([filled(request.note)?.slice(0, NOTE_LENGTH - odd.length - 2), odd === '' ? undefined : odd]);
  const seal = filled(request.seal) ?? (request.event === 'opened' && c.current.seal !== '' ? c.current.seal : undefined);
  const { from, to } = hands(request, c);
  return ok({
    event: request.event,
    ...(from !== undefined && { from }), ...(to !== undefined && { to }), ...outsidePart(request), ...(place !== undefined && { place }), ...(seal !== undefined && { seal }),
    ...weighed.content, ...(note !== '' && { note }),
  });
}

/** Longest note of an entry, as in app/domain/custody-event.ts. */
const NOTE_LENGTH = 2000;
