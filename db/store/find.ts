import type { ReadDb, StoreHandle } from '../handle.ts';
import { searchDocuments, type SearchDocument } from '../search/search-documents.ts';
import type { SearchKind } from '../search/search-kinds.ts';
import { holdsTerm, matchPartly, matchWholly, searchTerms } from '../search/search-words.ts';
import { rebuildSearch } from '../search/write-search.ts';

export type Found = { readonly kind: SearchKind | 'lot'; readonly id: string; readonly caseId: string | null; readonly title: string; readonly detail: string };

export type FindStore = {
  /**
   * Cases, lots, stones, clients and reports, and cases in bundles of other laboratories, whose number, name or words hold every word of the text, without regard to case and accents;
   * those that hold them as whole words first, then the newest; a few of each.
   */
  anything(text: string): Promise<Found[]>;
  /** Makes the index anew from the records. */
  rebuild(): Promise<void>;
};

/** Hits of each kind: a palette shows a handful. */
const EACH = 8;
/** Characters shown around a word that stands neither in the title nor in the detail. */
const EXCERPT = 90;

const OF_THESE = '(SELECT value FROM json_each(@ids))';
const SOURCES: readonly { readonly kind: SearchKind; readonly sql: string }[] = [
  { kind: 'case', sql: `SELECT n.id, n.id AS caseId, n.number AS title, k.name || ' · ' || n.asks AS detail FROM case_record n JOIN client k ON k.id = n.client_id WHERE n.id IN ${OF_THESE}` },
  {
    kind: 'stone', sql: `SELECT s.id, n.id AS caseId, n.number || ' ' || s.label AS title, CASE WHEN s.shape = '' THEN i.declared ELSE s.shape || ' · ' || i.declared END AS detail
      FROM stone s JOIN case_record n ON n.id = s.case_id JOIN item i ON i.id = s.item_id WHERE s.id IN ${OF_THESE}`,
  },
  { kind: 'client', sql: `SELECT k.id, NULL AS caseId, k.name AS title, k.address AS detail FROM client k WHERE k.id IN ${OF_THESE}` },
  {
    kind: 'report', sql: `SELECT r.id, n.id AS caseId, r.number || CASE WHEN r.revision > 1 THEN ', revision ' || r.revision ELSE '' END AS title, n.number || ' · ' || k.name AS detail
      FROM report r JOIN case_record n ON n.id = r.case_id JOIN client k ON k.id = n.client_id WHERE r.id IN ${OF_THESE}`,
  },
  { kind: 'sealed', sql: `SELECT c.id, NULL AS caseId, c.number AS title, b.laboratory || ' · ' || c.client AS detail FROM sealed_case c JOIN sealed_bundle b ON b.id = c.bundle_id WHERE c.id IN ${OF_THESE}` },
];

// The few newest are taken from the index before anything is joined to them: the index walks backwards and stops.
const hitsOf = (kind: SearchKind): string => `SELECT e.id FROM (SELECT rowid AS row FROM search_${kind} WHERE search_${kind} MATCH @match ORDER BY rowid DESC LIMIT ${EACH}) h
  CROSS JOIN search_entry e ON e.row = h.row ORDER BY h.row DESC`;

function hits(db: ReadDb, kind: SearchKind, terms: readonly string[]): string[] {
  const within = (match: string) => db.all<{ id: string }>(hitsOf(kind), { match: `own : (${match})` }).map(({ id }) => id);
  const whole = within(matchWholly(terms));
  return whole.length >= EACH ? whole : [...new Set([...whole, ...within(matchPartly(terms))])].slice(0, EACH);
}

/** "finding: Emission line at 736.8 nm" where a word was found that the hit does not show by itself. */
function elsewhere(document: SearchDocument | undefined, shown: string, terms: readonly string[]): string {
  const hidden = terms.find((term) => !holdsTerm(shown, term));
  const piece = hidden === undefined ? undefined : document?.own.find(({ text }) => holdsTerm(text, hidden));
  if (piece === undefined) return '';
  const text = piece.text.replace(/\s+/g, ' ').trim();
  return `${piece.where}: ${text.length > EXCERPT ? `${text.slice(0, EXCERPT)}…` : text}`;
}

function described(db: ReadDb, kind: SearchKind, sql: string, terms: readonly string[]): Found[] {
  const ids = hits(db, kind, terms);
  if (ids.length === 0) return [];
  const rows = new Map(db.all<Omit<Found, 'kind'>>(sql, { ids: JSON.stringify(ids) }).map((row) => [row.id, row]));
  const documents = new Map(searchDocuments(db, kind, ids).map((document) => [document.id, document]));
  return ids.flatMap((id) => rows.get(id) ?? []).map((row) => {
    const found = elsewhere(documents.get(row.id), `${row.title} ${row.detail}`, terms);
    return { kind, ...row, detail: [row.detail, found].filter((part) => part !== '').join(' · ') };
  });
}

/** Lots stand in the index with their case: those of the cases found whose own words hold every term. */
function lotsOf(db: ReadDb, cases: readonly Found[], terms: readonly string[]): Found[] {
  if (cases.length === 0) return [];
  const rows = db.all<Omit<Found, 'kind'> & { client: string }>(`SELECT i.id, n.id AS caseId, n.number || ' ' || i.label AS title, i.declared AS detail, k.name AS client
    FROM item i JOIN case_record n ON n.id = i.case_id JOIN client k ON k.id = n.client_id WHERE i.kind = 'lot' AND i.case_id IN ${OF_THESE} ORDER BY i.rowid DESC`, { ids: JSON.stringify(cases.map(({ id }) => id)) });
  return rows.filter(({ title, detail, client }) => terms.every((term) => holdsTerm(`${title} lot ${detail} ${client}`, term))).slice(0, EACH)
    .map(({ id, caseId, title, detail, client }) => ({ kind: 'lot', id, caseId, title, detail: `${client} · ${detail}` }));
}

const isDamaged = (error: unknown): boolean => error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_CORRUPT_VTAB');

export function createFindStore(handle: StoreHandle): FindStore {
  const look = (terms: readonly string[]): Found[] => SOURCES.flatMap(({ kind, sql }) => {
    const found = described(handle.read, kind, sql, terms);
    return kind === 'case' ? [...found, ...lotsOf(handle.read, found, terms)] : found;
  });
  const rebuild = (): Promise<void> => handle.transact((tx) => { rebuildSearch(tx); });
  return {
    rebuild,
    async anything(text) {
      const terms = searchTerms(text);
      if (terms.length === 0) return [];
      try {
        return look(terms);
      } catch (fault) {
        // The index holds nothing of its own: a broken one is made anew.
        if (!isDamaged(fault)) throw fault;
        await rebuild();
        return look(terms);
      }
    },
  };
}
