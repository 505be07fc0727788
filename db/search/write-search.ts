import type { WriteTx } from '../handle.ts';
import { searchDocuments, type SearchDocument } from './search-documents.ts';
import { rowRange, SEARCH_KINDS, SEARCH_TABLES, type SearchKind } from './search-kinds.ts';
import { indexedText } from './search-words.ts';

/** Entries put into the index between two reads of the records. */
const SLICE = 400;

function rowOf(tx: WriteTx, kind: SearchKind, id: string): number {
  const known = tx.get<{ row: number }>('SELECT row FROM search_entry WHERE kind = ? AND id = ?', [kind, id]);
  if (known) return known.row;
  const { low, high } = rowRange(kind);
  const row = (tx.get<{ n: number | null }>('SELECT max(row) AS n FROM search_entry WHERE row BETWEEN ? AND ?', [low, high])?.n ?? low) + 1;
  tx.run('INSERT INTO search_entry (row, kind, id) VALUES (?, ?, ?)', [row, kind, id]);
  return row;
}

const textOf = (pieces: SearchDocument['own']): string => indexedText(pieces.map(({ text }) => text));

/** Puts entries of a kind into the index as they stand in the records now, inside the caller's transaction. */
export function writeSearch(tx: WriteTx, kind: SearchKind, ids: readonly string[]): void {
  for (let from = 0; from < ids.length; from += SLICE) {
    for (const document of searchDocuments(tx, kind, ids.slice(from, from + SLICE))) {
      tx.run(`INSERT OR REPLACE INTO search_${kind} (rowid, own, around) VALUES (?, ?, ?)`, [rowOf(tx, kind, document.id), textOf(document.own), textOf(document.around)]);
    }
  }
}

/** Whether every record that can be found has its entry. */
export function searchIsWhole(db: Pick<WriteTx, 'get'>): boolean {
  return SEARCH_KINDS.every((kind) => {
    const { low, high } = rowRange(kind);
    const row = db.get<{ held: number; known: number }>(`SELECT (SELECT count(*) FROM ${SEARCH_TABLES[kind]}) AS held, (SELECT count(*) FROM search_entry WHERE row BETWEEN @low AND @high) AS known`, { low, high });
    return row!.held === row!.known;
  });
}

/** Makes the whole index anew from the records, inside the caller's transaction. */
export function rebuildSearch(tx: WriteTx): void {
  tx.run('DELETE FROM search_entry');
  for (const kind of SEARCH_KINDS) {
    tx.run(`INSERT INTO search_${kind} (search_${kind}) VALUES ('delete-all')`);
    writeSearch(tx, kind, tx.all<{ id: string }>(`SELECT id FROM ${SEARCH_TABLES[kind]} ORDER BY rowid`).map(({ id }) => id));
  }
}
