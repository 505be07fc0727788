import type { HistorySort, SortedBy, StoneSort } from '../../app/contract/list-page.ts';
import type { ReadDb } from '../handle.ts';
import { WITHHELD } from '../search/sealed-sql.ts';
import { inSlices } from './in-slices.ts';
import { sortRows, type SortKey } from './sort-rows.ts';

/** For whom a list is sorted: what is withheld from them gives no stone its place. */
export type Viewer = { readonly viewer: string | null; readonly since: string | null };

/** The newest conclusion on `stone s` and the answer to it. */
export const NEWEST = `LEFT JOIN conclusion c ON c.stone_id = s.id AND c.ordinal = (SELECT max(ordinal) FROM conclusion x WHERE x.stone_id = s.id) LEFT JOIN confirmation f ON f.conclusion_id = c.id`;
const OF_CASE = 'JOIN case_record n ON n.id = s.case_id';
const STAGE = `CASE WHEN c.id IS NULL THEN 'open' WHEN f.id IS NULL THEN 'second person to confirm' WHEN f.agrees = 1 THEN 'confirmed' ELSE 'second person disagrees' END`;

type Sort = { readonly parts: readonly string[]; readonly joins: string };

/** Parts of the key in SQL, over `stone s` and the tables joined to it. */
function sortOf(key: StoneSort | HistorySort, { since }: Viewer): Sort {
  const shown = (sql: string, otherwise: string): string => (since === null ? sql : `CASE WHEN c.id IS NOT NULL AND f.id IS NULL AND ${WITHHELD('s.id')} THEN ${otherwise} ELSE ${sql} END`);
  const sorts: Readonly<Record<StoneSort | HistorySort, Sort>> = {
    case: { parts: ['n.number'], joins: OF_CASE },
    label: { parts: ['n.number', 's.label'], joins: OF_CASE },
    received: { parts: ['n.received_at'], joins: OF_CASE },
    client: { parts: ['k.name'], joins: `${OF_CASE} JOIN client k ON k.id = n.client_id` },
    conclusion: { parts: [shown(`coalesce(c.conclusion, '')`, `''`)], joins: NEWEST },
    stage: {
      parts: [STAGE, shown(`EXISTS (SELECT 1 FROM conclusion u WHERE u.stone_id = s.id AND u.conclusion = 'undetermined')`, '0'), 'EXISTS (SELECT 1 FROM conclusion u JOIN confirmation a ON a.conclusion_id = u.id WHERE u.stone_id = s.id AND a.agrees = 0)'],
      joins: NEWEST,
    },
    people: { parts: [`coalesce(p.name, '')`], joins: `${NEWEST} LEFT JOIN person p ON p.id = c.person_id` },
    weight: { parts: ['coalesce(s.weight, -1)'], joins: '' },
    colour: { parts: ['s.colour_class'], joins: '' },
    runs: { parts: ['(SELECT count(*) FROM test_run r WHERE r.stone_id = s.id)'], joins: '' },
  };
  return sorts[key];
}

/** Stones by what a column of the window shows of them. */
export async function sortStones(db: ReadDb, rows: readonly number[], by: SortedBy<StoneSort | HistorySort>, viewer: Viewer): Promise<number[]> {
  if (by === null) return [...rows];
  const { parts, joins } = sortOf(by.key, viewer);
  const sql = `SELECT s.rowid, ${parts.join(', ')} FROM stone s ${joins} WHERE s.rowid IN (SELECT value FROM json_each(@rows))`;
  const keys = await inSlices(rows, (some) => {
    const known = new Map(db.values<[number, ...SortKey[]]>(sql, { rows: JSON.stringify(some), ...(sql.includes('@since') && viewer) }).map(([row, ...key]) => [row, key]));
    return some.map((row) => known.get(row) ?? parts.map(() => ''));
  });
  return sortRows(rows, keys, by.down);
}
