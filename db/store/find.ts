import { fold } from '../fold.ts';
import type { StoreHandle } from '../handle.ts';

export type Found = { readonly kind: 'case' | 'stone' | 'client' | 'report'; readonly id: string; readonly caseId: string | null; readonly title: string; readonly detail: string };

export type FindStore = {
  /** Cases, stones, clients and reports whose number, name or words hold every word of the text; newest first, a few of each. */
  anything(text: string): Promise<Found[]>;
};

/** Hits of each kind: a palette shows a handful. */
const EACH = 8;

type Source = { readonly kind: Found['kind']; readonly from: string; readonly id: string; readonly caseId: string; readonly title: string; readonly detail: string; readonly searched: string; readonly order: string };

const SOURCES: readonly Source[] = [
  {
    kind: 'case', from: 'case_record n JOIN client k ON k.id = n.client_id', id: 'n.id', caseId: 'n.id', title: 'n.number', detail: `k.name || ' · ' || n.asks`,
    searched: `n.number || ' ' || k.name || ' ' || n.asks`, order: 'n.received_at DESC',
  },
  {
    kind: 'stone', from: 'stone s JOIN case_record n ON n.id = s.case_id JOIN item i ON i.id = s.item_id', id: 's.id', caseId: 'n.id', title: `n.number || ' ' || s.label`,
    detail: `CASE WHEN s.shape = '' THEN i.declared ELSE s.shape || ' · ' || i.declared END`, searched: `n.number || ' ' || s.label || ' ' || s.shape || ' ' || i.declared`, order: 's.rowid DESC',
  },
  { kind: 'client', from: 'client k', id: 'k.id', caseId: 'NULL', title: 'k.name', detail: 'k.address', searched: `k.name || ' ' || k.address || ' ' || k.email`, order: 'k.name COLLATE NOCASE' },
  {
    kind: 'report', from: 'report r JOIN case_record n ON n.id = r.case_id JOIN client k ON k.id = n.client_id', id: 'r.id', caseId: 'n.id',
    title: `r.number || CASE WHEN r.revision > 1 THEN ', revision ' || r.revision ELSE '' END`, detail: `n.number || ' · ' || k.name`,
    searched: `r.number || ' ' || n.number || ' ' || k.name`, order: 'r.issued_at DESC',
  },
];

function sql(source: Source, words: number): string {
  const holds = Array.from({ length: words }, (_, i) => `instr(fold(${source.searched}), @w${i}) > 0`).join(' AND ');
  return `SELECT '${source.kind}' AS kind, ${source.id} AS id, ${source.caseId} AS caseId, ${source.title} AS title, ${source.detail} AS detail
    FROM ${source.from} WHERE ${holds} ORDER BY ${source.order} LIMIT ${EACH}`;
}

/** Words looked at: a person types few, and each is a parameter of the query. */
const MOST_WORDS = 6;

export function createFindStore(handle: StoreHandle): FindStore {
  return {
    async anything(text) {
      const words = fold(text).split(/\s+/).filter((word) => word !== '').slice(0, MOST_WORDS);
      if (words.length === 0) return [];
      const parameters = Object.fromEntries(words.map((word, i) => [`w${i}`, word]));
      return SOURCES.flatMap((source) => handle.read.all<Found>(sql(source, words.length), parameters));
    },
  };
}
