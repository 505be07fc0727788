import type { LotOutcome } from './lot-outcome.ts';
import type { LotRecord } from './lot-record.ts';

/** What stands for one number: the newest entry, and how often it was entered before. */
export type LotResult = {
  readonly number: number; readonly outcome: LotOutcome; readonly at: string; readonly by: string; readonly source: 'keyed' | 'imported' | 'folder';
  readonly stoneId: string | null;
  /** What it said before, where it was corrected; null where it was not. */
  readonly before: LotOutcome | null;
};

/** What stands for each number after all entries, in the order of numbers. Entries that were taken back are gone from it; the book keeps them. */
export function foldResults(records: readonly LotRecord[]): LotResult[] {
  const standing = new Map<number, LotResult>();
  for (const { at, by, content } of records) {
    if (content.kind !== 'results') continue;
    for (const entry of content.entries) {
      if (entry.outcome === null) standing.delete(entry.number);
      else {
        const old = standing.get(entry.number);
        const before = old === undefined ? null : old.outcome === entry.outcome ? old.before : old.outcome;
        standing.set(entry.number, { number: entry.number, outcome: entry.outcome, at, by, source: content.source, stoneId: entry.stoneId ?? null, before });
      }
    }
  }
  return [...standing.values()].sort((a, b) => a.number - b.number);
}
