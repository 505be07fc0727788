import { CASE_WORD_PARTS } from '../../app/bundle/case-words.ts';
import { CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import type { ReadDb, WriteTx } from '../handle.ts';
import { SEALED } from './sealed-sql.ts';
import type { SearchKind } from './search-kinds.ts';

/** What is known of one entry: its own words, and those of what it belongs to. Each piece says where it stands. */
export type SearchDocument = { readonly id: string; readonly own: readonly Piece[]; readonly around: readonly Piece[] };
export type Piece = { readonly where: string; readonly text: string };

type Row = Record<string, string | null> & { id: string };

/** Between texts that stand in one column. */
export const SEPARATOR = '\u001f';
const joined = (column: string, from: string): string => `(SELECT group_concat(${column}, '${SEPARATOR}') FROM ${from})`;
const OF_THESE = '(SELECT value FROM json_each(@ids))';

const SQL: Readonly<Record<SearchKind, string>> = {
  client: `SELECT k.id, k.name AS own_name, k.address AS own_address, k.email AS "own_e-mail", k.phone AS own_telephone, k.note AS own_note FROM client k WHERE k.id IN ${OF_THESE}`,
  case: `SELECT n.id, n.number AS own_number, k.name AS own_client, n.asks AS own_question, n.remarks AS own_remark,
    ${joined(`p.seal_number || ' ' || p.remarks`, 'parcel p WHERE p.case_id = n.id')} AS own_parcel,
    ${joined(`i.label || ' ' || i.declared || ' ' || i.declared_value || ' ' || i.condition`, 'item i WHERE i.case_id = n.id')} AS own_item,
    ${joined(`json_extract(e.content, '$.note')`, 'item i JOIN custody_entry e ON e.item_id = i.id WHERE i.case_id = n.id')} AS own_custody,
    ${joined('f.caption', 'photograph f WHERE f.case_id = n.id')} AS own_photograph
    FROM case_record n JOIN client k ON k.id = n.client_id WHERE n.id IN ${OF_THESE}`,
  stone: `SELECT s.id, n.number || ' ' || s.label AS own_number, s.shape AS own_shape, s.position AS own_position, s.measurements AS own_measurement, i.declared AS own_declared,
    ${joined('c.conclusion', `conclusion c WHERE c.stone_id = s.id AND NOT ${SEALED('s.id')}`)} AS own_conclusion,
    ${joined(`c.reasons || ' ' || c.departure`, `conclusion c WHERE c.stone_id = s.id AND NOT ${SEALED('s.id')}`)} AS own_reason,
    ${joined('a.reason', 'confirmation a JOIN conclusion c ON c.id = a.conclusion_id WHERE c.stone_id = s.id')} AS own_answer,
    ${joined('f.statement', `finding f WHERE f.stone_id = s.id AND f.state <> 'replaced'`)} AS own_finding,
    ${joined('r.note', 'test_run r WHERE r.stone_id = s.id')} AS own_note,
    k.name AS around_client, n.asks AS around_question, n.remarks AS around_remark
    FROM stone s JOIN item i ON i.id = s.item_id JOIN case_record n ON n.id = s.case_id JOIN client k ON k.id = n.client_id WHERE s.id IN ${OF_THESE}`,
  report: `SELECT r.id, r.number AS own_number, n.number AS own_case, k.name AS own_client
    FROM report r JOIN case_record n ON n.id = r.case_id JOIN client k ON k.id = n.client_id WHERE r.id IN ${OF_THESE}`,
  // A case of another laboratory, in a bundle that was taken in.
  sealed: `SELECT c.id, c.number AS own_number, c.client AS own_client, b.laboratory AS own_laboratory, ${CASE_WORD_PARTS.map((part) => `c.${part} AS own_${part}`).join(', ')}
    FROM sealed_case c JOIN sealed_bundle b ON b.id = c.bundle_id WHERE c.id IN ${OF_THESE}`,
};

function pieces(row: Row, prefix: 'own_' | 'around_'): Piece[] {
  return Object.entries(row).filter(([key, value]) => key.startsWith(prefix) && value !== null).flatMap(([key, value]) => {
    const where = key.slice(prefix.length);
    const texts = value!.split(SEPARATOR).filter((text) => text.trim() !== '');
    return texts.map((text) => ({ where, text: where === 'conclusion' ? CONCLUSION_WORDS[text as ConclusionId] ?? text : text }));
  });
}

/** The entries of a kind with these ids, as they stand in the records now. */
export function searchDocuments(db: ReadDb | WriteTx, kind: SearchKind, ids: readonly string[]): SearchDocument[] {
  return db.all<Row>(SQL[kind], { ids: JSON.stringify(ids) }).map((row) => ({ id: row.id, own: pieces(row, 'own_'), around: pieces(row, 'around_') }));
}
