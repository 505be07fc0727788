import type { Failure } from '../../app/contract/failure.ts';
import { foldResults } from '../../app/lots/fold-results.ts';
import { isGrown, OUTCOME_SHORT, outcomeOfConclusion } from '../../app/lots/lot-outcome.ts';
import { newestOf, type LotContent, type LotRecord, type ResultsContent } from '../../app/lots/lot-record.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../change.ts';
import type { StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { lotRecord } from '../schema/index.ts';
import { lotBook, lotItem, type LotItem } from './lots-read.ts';
import { putRawRecord } from './put-raw-record.ts';
import { notFound, refused } from './refusals.ts';
import { sealedAmong } from './second-readings.ts';
import { stoneSummary } from './stone-summaries.ts';
import { closed } from './stones.ts';

type Signed = Change & { readonly personId: string };
/** A lot as it stands inside the transaction: the item, its book, its count. */
export type LotNow = { readonly item: LotItem; readonly book: readonly LotRecord[]; readonly count: number | null };
type ImportedFile = { readonly name: string; readonly bytes: Uint8Array };

export type LotsStore = {
  get(itemId: string): Promise<LotNow | null>;
  /** Writes what `make` gives for the lot as it stands, or refuses with its words; a file is kept as a raw record with it. */
  write(change: Signed, itemId: string, make: (now: LotNow) => Result<LotContent, Failure>, file?: ImportedFile): Promise<Result<{ ordinal: number }, Failure>>;
};

/** The count that holds: the newest one, else that of the intake. */
export const countOf = (item: LotItem, book: readonly LotRecord[]): number | null => newestOf(book, 'count')?.content.count ?? item.count;

/** What the audit ledger says of an entry; the digest of its row vouches for every single result. */
function summary(content: LotContent) {
  if (content.kind !== 'results') return content;
  const { entries, source, file } = content;
  const grown = entries.filter((entry) => entry.outcome !== null && isGrown(entry.outcome)).length;
  return { kind: content.kind, source, file, results: entries.length, laboratoryGrown: grown, ...(entries.length <= 10 ? { entries: entries.map((entry) => ({ ...entry })) } : {}) };
}

const conflict = (message: string): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'conflict', message, next: 'Nothing of this was kept. Look at what stands there now, and enter it again.' });

/** Refuses results that do not fit what stands: numbers beyond the lot, something that another has changed meanwhile, a folder that says otherwise. */
function checkResults(tx: WriteTx, now: LotNow, content: ResultsContent): { readonly ok: false; readonly error: Failure } | null {
  if (now.count === null) return refused('This lot has no count.', 'Count its stones first: results are entered by the stone’s number.');
  const standing = new Map(foldResults(now.book).map((result) => [result.number, result]));
  for (const { number, outcome, was, stoneId } of content.entries) {
    if (number > now.count && outcome !== null) return refused(`The lot counts ${now.count} stones; there is no stone ${number}.`, 'Correct the number, or count the lot again.');
    const there = standing.get(number);
    if ((there?.outcome ?? null) !== was) {
      return conflict(there === undefined ? `What stood for stone ${number} was taken back meanwhile.` : `Stone ${number} was meanwhile entered as “${OUTCOME_SHORT[there.outcome]}” by ${there.by}.`);
    }
    if (outcome === null) standing.delete(number);
    else standing.set(number, { number, outcome, at: '', by: 'this entry', source: content.source, stoneId: stoneId ?? null, before: null });
    if (stoneId === undefined) continue;
    const folder = stoneSummary(tx, stoneId);
    if (folder === null || folder.itemId !== now.item.itemId) return notFound('That stone of the lot');
    if (folder.conclusion === null) return refused(`Stone ${folder.label} has no conclusion yet.`, 'Conclude in its folder first.');
    // The book of a lot is read by everybody: whoever is to state theirs first would find the first conclusion in it.
    if (sealedAmong(tx, [stoneId]).size > 0) return refused(`${folder.label} is concluded, and a second person has not answered yet.`, 'Take its result over once they have: the lot would show them the first conclusion.');
    if (outcomeOfConclusion(folder.conclusion) !== outcome) return conflict(`The folder of ${folder.label} concludes otherwise.`);
  }
  return null;
}

function nowOf(item: LotItem, book: readonly LotRecord[]): LotNow {
  return { item, book, count: countOf(item, book) };
}

export function createLotsStore(handle: StoreHandle, newId: () => string): LotsStore {
  return {
    async get(itemId) {
      const item = lotItem(handle.read, itemId);
      return item?.kind === 'lot' ? nowOf(item, lotBook(handle.read, itemId)) : null;
    },
    write: (change, itemId, make, file) => handle.transactResult<{ ordinal: number }, Failure>((tx) => {
      const item = lotItem(tx, itemId);
      if (item?.kind !== 'lot') return notFound('That lot');
      if (item.caseState === 'returned') return closed();
      const now = nowOf(item, lotBook(tx, itemId));
      const made = make(now);
      if (!made.ok) return made;
      let content = made.value;
      if (content.kind === 'results') {
        const wrong = checkResults(tx, now, content);
        if (wrong !== null) return wrong;
        if (file !== undefined) {
          const raw = putRawRecord(tx, { newId }, change, { caseId: item.caseId, name: file.name, mediaType: 'text/plain', bytes: file.bytes });
          content = { ...content, file: { rawRecordId: raw.id, name: file.name, sha256: raw.sha256 } };
        }
      }
      const ordinal = (now.book.at(-1)?.ordinal ?? 0) + 1;
      tx.orm.insert(lotRecord).values({ id: newId(), caseId: item.caseId, itemId, ordinal, kind: content.kind, content: JSON.stringify(content), at: change.at, personId: change.personId }).run();
      appendAudit(tx, change, { subject: itemId, caseId: item.caseId, content: { lot: item.label, entry: ordinal, ...summary(content) } });
      return ok({ ordinal });
    }),
  };
}
