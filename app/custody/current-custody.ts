import type { CustodyContent, CustodyEvent } from '../domain/custody-event.ts';

/** Where an item is now, as the entries of its custody tell it. */
export type CurrentCustody = {
  readonly place: string;
  readonly holder: string;
  /** Number of the seal it is under; empty when it is under none. */
  readonly seal: string;
  readonly lastEvent: CustodyEvent;
  readonly at: string;
  /** True once any comparison of weights went beyond the tolerance: a later agreeing reading does not wipe it out. */
  readonly differs: boolean;
  /** The first reading of all: what came in. */
  readonly firstWeight: { readonly weight: number; readonly unit: 'ct' | 'g' } | null;
  readonly lastWeight: { readonly weight: number; readonly unit: 'ct' | 'g' } | null;
  /** With whom it is outside the house, since when, and by which day it is expected back (null where none was agreed); null while it is in the house. */
  readonly out: { readonly to: string; readonly since: string; readonly dueBack: string | null; readonly purpose: string } | null;
  /** It has gone back to the client. */
  readonly returned: boolean;
};

function sealAfter(seal: string, content: CustodyContent): string {
  switch (content.event) {
    case 'opened': return '';
    case 'received':
    case 'seen':
    case 'taken-back':
    case 'sealed': return content.seal ?? seal;
    default: return seal;
  }
}

function holderAfter(holder: string, content: CustodyContent): string {
  switch (content.event) {
    case 'received':
    case 'handed-over':
    case 'taken-back':
    case 'returned': return content.to ?? holder;
    default: return holder;
  }
}

function outAfter(out: CurrentCustody['out'], at: string, content: CustodyContent): CurrentCustody['out'] {
  switch (content.event) {
    case 'handed-over': return content.outside === true ? { to: content.to ?? '', since: at, dueBack: content.dueBack ?? null, purpose: content.purpose ?? '' } : null;
    case 'taken-back':
    case 'returned': return null;
    default: return out;
  }
}

function after(before: CurrentCustody | null, at: string, content: CustodyContent): CurrentCustody {
  // Nothing brings an item back but a new hand-over, which makes a new item.
  const returned = (before?.returned ?? false) || content.event === 'returned';
  const weight = content.weight === undefined ? null : { weight: content.weight, unit: content.weightUnit ?? 'ct' };
  const out = outAfter(before?.out ?? null, at, content);
  // The shelf it lay on is no longer where it is.
  const left = content.outside === true;
  return {
    place: returned ? '' : content.place ?? (left ? '' : before?.place ?? ''),
    holder: holderAfter(before?.holder ?? '', content),
    seal: sealAfter(before?.seal ?? '', content),
    lastEvent: content.event, at,
    differs: (before?.differs ?? false) || content.differs === true,
    firstWeight: before?.firstWeight ?? weight,
    lastWeight: weight ?? before?.lastWeight ?? null,
    out, returned,
  };
}

/** Folds the entries of one item, oldest first; null while it has none. */
export function currentCustody(entries: Iterable<{ readonly at: string; readonly content: CustodyContent }>): CurrentCustody | null {
  let now: CurrentCustody | null = null;
  for (const { at, content } of entries) now = after(now, at, content);
  return now;
}
