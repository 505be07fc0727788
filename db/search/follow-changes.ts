import type { WriteTx } from '../handle.ts';
import type { SearchKind } from './search-kinds.ts';
import { writeSearch } from './write-search.ts';

/** Which entries speak of a row of a table: `@ids` are the rows that were written. */
const SPEAKS_OF: Readonly<Record<string, readonly (readonly [SearchKind, string])[]>> = {
  client: [
    ['client', 'SELECT value AS id FROM json_each(@ids)'], ['case', 'SELECT id FROM case_record WHERE client_id IN (SELECT value FROM json_each(@ids))'],
    ['stone', 'SELECT s.id FROM stone s JOIN case_record n ON n.id = s.case_id WHERE n.client_id IN (SELECT value FROM json_each(@ids))'],
    ['report', 'SELECT r.id FROM report r JOIN case_record n ON n.id = r.case_id WHERE n.client_id IN (SELECT value FROM json_each(@ids))'],
  ],
  case_record: [['case', 'SELECT value AS id FROM json_each(@ids)'], ['stone', 'SELECT id FROM stone WHERE case_id IN (SELECT value FROM json_each(@ids))']],
  parcel: [['case', 'SELECT case_id AS id FROM parcel WHERE id IN (SELECT value FROM json_each(@ids))']],
  item: [['case', 'SELECT case_id AS id FROM item WHERE id IN (SELECT value FROM json_each(@ids))'], ['stone', 'SELECT id FROM stone WHERE item_id IN (SELECT value FROM json_each(@ids))']],
  photograph: [['case', 'SELECT case_id AS id FROM photograph WHERE id IN (SELECT value FROM json_each(@ids))']],
  stone: [['stone', 'SELECT value AS id FROM json_each(@ids)']],
  test_run: [['stone', 'SELECT stone_id AS id FROM test_run WHERE id IN (SELECT value FROM json_each(@ids))']],
  finding: [['stone', 'SELECT stone_id AS id FROM finding WHERE id IN (SELECT value FROM json_each(@ids))']],
  conclusion: [['stone', 'SELECT stone_id AS id FROM conclusion WHERE id IN (SELECT value FROM json_each(@ids))']],
  confirmation: [['stone', 'SELECT c.stone_id AS id FROM confirmation a JOIN conclusion c ON c.id = a.conclusion_id WHERE a.id IN (SELECT value FROM json_each(@ids))']],
  report: [['report', 'SELECT value AS id FROM json_each(@ids)']],
};

/** Brings the search index in step with the rows that a transaction wrote; stands or falls with them. */
export function followChanges(tx: WriteTx, written: ReadonlyMap<string, readonly (string | number)[]>): void {
  const due = new Map<SearchKind, Set<string>>();
  for (const [table, rows] of written) {
    for (const [kind, sql] of SPEAKS_OF[table] ?? []) {
      const known = due.get(kind) ?? new Set<string>();
      due.set(kind, known);
      for (const { id } of tx.all<{ id: string }>(sql, { ids: JSON.stringify(rows) })) known.add(id);
    }
  }
  for (const [kind, ids] of due) writeSearch(tx, kind, [...ids]);
}
