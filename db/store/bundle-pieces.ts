import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';

/** Length of every piece but the last, bytes: it is written or read in a few milliseconds. */
export const PIECE_BYTES = 1024 * 1024;

/** The pieces of a kept bundle in their order, one in memory at a time. `zip`: what stands in its row, in casebooks from before there were pieces. */
export function* bundlePieces(db: ReadDb | WriteTx, id: string, zip: Uint8Array): Generator<Uint8Array> {
  if (zip.byteLength > 0) {
    yield zip;
    return;
  }
  for (let seq = 0; ; seq += 1) {
    const row = db.get<{ bytes: Buffer }>('SELECT bytes FROM sealed_bundle_piece WHERE bundle_id = ? AND seq = ?', [id, seq]);
    if (row === undefined) return;
    yield row.bytes;
  }
}

/** Writes one piece in a transaction of its own. Throws what SQLite throws, a full disk among it. */
export const putPiece = (handle: StoreHandle, id: string, seq: number, bytes: Uint8Array): Promise<void> =>
  handle.transact((tx) => { tx.run('INSERT INTO sealed_bundle_piece (id, bundle_id, seq, bytes) VALUES (?, ?, ?, ?)', [`${id}/${seq}`, id, seq, bytes]); });

const LEFT_OVER = 'SELECT p.id FROM sealed_bundle_piece p WHERE NOT EXISTS (SELECT 1 FROM sealed_bundle b WHERE b.id = p.bundle_id)';

/** Pieces taken out in one transaction: more would swell the write-ahead log. */
const DROPPED_AT_ONCE = 8;

/** Takes out some of the pieces of bundles that did not come about; gives their number, 0 once none is left. */
export function dropLeftOver(tx: WriteTx): number {
  return tx.run(`DELETE FROM sealed_bundle_piece WHERE id IN (${LEFT_OVER} LIMIT ${DROPPED_AT_ONCE})`).changes;
}

export const hasLeftOver = (db: Pick<ReadDb, 'get'>): boolean => db.get(`${LEFT_OVER} LIMIT 1`) !== undefined;
