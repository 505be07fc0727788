import type { CustodyDocument } from '../bundle/case-document.ts';
import type { LaboratoryView } from '../contract/casebook.ts';
import type { CaseView, ItemView } from '../contract/cases.ts';
import { entryHash } from '../custody/chain.ts';
import { CUSTODY_EVENT_WORDS } from '../domain/custody-event.ts';
import { KIND_WORDS } from './content/item-part.ts';
import { dayWords, localTime } from './content/local-time.ts';
import { countWords } from './count-words.ts';
import { custodyTold, custodyWeighing } from './custody-words.ts';
import type { CustodyPagesModel } from './custody-pages-model.ts';
import { itemNumber } from './item-words.ts';

export type CustodyPagesSource = {
  readonly laboratory: LaboratoryView;
  readonly logo: CustodyPagesModel['laboratory']['logo'];
  readonly view: CaseView;
  /** One item's id, or null for the whole case. */
  readonly itemId: string | null;
  /** Entries of the case as they were hashed, in the ledger's order. */
  readonly entries: CustodyDocument['entries'];
  readonly printedBy: string;
  /** UTC ISO 8601. */
  readonly at: string;
};

type PageItem = CustodyPagesModel['items'][number];
type Entry = CustodyDocument['entries'][number];

function holdsOf({ statement: { previous, ...statement }, hash }: Entry): boolean {
  try {
    return entryHash(previous, statement) === hash;
  } catch {
    return false;
  }
}

function nowWords({ custody: c }: ItemView, zone: string): string {
  if (c.lastEvent === 'returned') return `Returned to the client on ${localTime(c.at, zone)}.`;
  const seal = c.seal === '' ? 'under no seal' : `under seal ${c.seal}`;
  if (c.out !== null) return `Out of the house with ${c.out.to} since ${localTime(c.out.since, zone)}${c.out.dueBack === null ? ', no day agreed' : `, expected back by ${dayWords(c.out.dueBack)}`}; ${seal}.`;
  const hands = c.holder === '' ? '' : ` in the hands of ${c.holder}`;
  return `In the house${c.place === '' ? '' : `, ${c.place},`}${hands}, ${seal}; last ${CUSTODY_EVENT_WORDS[c.lastEvent]} on ${localTime(c.at, zone)}.`;
}

function doubtsOf(item: ItemView, entries: PageItem['entries']): string[] {
  const broken = entries.filter((entry) => !entry.holds);
  return [
    ...(item.custody.differs ? ['A weight differs by more than the tolerance from the one it answers to; the entry says by how much.'] : []),
    ...(broken.length > 0 ? [`${broken.length === 1 ? 'Entry' : 'Entries'} ${broken.map((entry) => entry.seq).join(', ')} no longer ${broken.length === 1 ? 'gives its digest' : 'give their digests'}: changed after writing.`] : []),
  ];
}

function itemPart(item: ItemView, source: CustodyPagesSource): PageItem {
  const { view, laboratory: { zone } } = source;
  const entries = source.entries.filter(({ statement }) => statement.item === item.id).map((entry) => {
    const { statement, hash, personName } = entry;
    const { content } = statement;
    return {
      seq: statement.seq, at: localTime(statement.at, zone), what: custodyTold(content), who: personName,
      weight: custodyWeighing(content), differs: content.differs === true, hash, holds: holdsOf(entry),
    };
  });
  return { number: itemNumber(view.number, item.label), declared: item.declared, kind: KIND_WORDS[item.kind], now: nowWords(item, zone), doubts: doubtsOf(item, entries), entries };
}

function checkOf(items: readonly PageItem[]): CustodyPagesModel['check'] {
  const entries = items.flatMap((item) => item.entries);
  const broken = entries.filter((entry) => !entry.holds).length;
  if (broken > 0) return { holds: false, sentence: `${broken} of ${countWords(entries.length, 'entry', 'entries')} no longer give the digest they were written with. Do not rely on these pages; verify the casebook and restore a backup in which it is sound.` };
  return { holds: true, sentence: `${entries.length === 1 ? 'The one entry below' : `Each of the ${countWords(entries.length, 'entry', 'entries')} below`} gave its digest when these pages were drawn: SHA-256 over its content and the digest of the ledger’s entry before it. That no entry of the ledger is missing is told by verifying the whole casebook.` };
}

/** The chain of custody of a case or of one item, ready to print. */
export function buildCustodyPages(source: CustodyPagesSource): CustodyPagesModel {
  const { laboratory, view, itemId, at } = source;
  const shown = view.parcels.flatMap((parcel) => parcel.items).filter((item) => itemId === null || item.id === itemId);
  const items = shown.map((item) => itemPart(item, source));
  return {
    schema: 'culet-custody-pages-1', language: 'en', demonstration: laboratory.isDemonstration, pageSize: laboratory.settings.pageSize,
    laboratory: { name: laboratory.name, address: laboratory.address, zone: laboratory.zone, logo: source.logo },
    client: view.client.name, caseNumber: view.number, subject: itemId === null ? view.number : items[0]?.number ?? view.number,
    received: localTime(view.receivedAt, laboratory.zone), printed: localTime(at, laboratory.zone), printedAt: at, printedBy: source.printedBy,
    items, check: checkOf(items),
  };
}
