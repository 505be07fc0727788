import type { ReadDb } from '../handle.ts';
import { checkpointsPiece, type Outside } from './checkpoints.ts';
import { guardsPiece } from './guards-piece.ts';
import { filePiece, type FileFound } from './file-piece.ts';
import { auditPiece, custodyPiece, type AuditFound, type CustodyFound, type Heads } from './ledger-pieces.ts';
import { countPiece, layoutPiece, type Layout } from './layout.ts';
import { numbersFault } from './numbers.ts';
import type { Pace, Part } from './part.ts';
import type { Range } from './ranges.ts';
import { recordsPiece, withdrawnPiece, type RecordsFound, type RecordTable } from './records-piece.ts';
import { namePiece, rowsPiece, type RowsFound } from './rows-piece.ts';

/** Work on a casebook that leans on no other: it can be done by any connection, in any order. Plain data, as is what is found: both cross a thread border. */
export type Piece =
  | { readonly kind: 'audit'; readonly range: Range }
  | { readonly kind: 'custody'; readonly range: Range; readonly heads: Heads }
  | { readonly kind: 'records'; readonly table: RecordTable; readonly range: Range }
  | { readonly kind: 'rows'; readonly table: string; readonly range: Range }
  /** `table` null: the whole file in one go. `sound`: only the references of the table. */
  | { readonly kind: 'file'; readonly table: string | null; readonly sound: boolean }
  /** Small questions; who puts the work together has no connection of its own. */
  | { readonly kind: 'layout' | 'count' | 'numbers' | 'withdrawn' }
  | { readonly kind: 'checkpoints'; readonly outside: Outside }
  | { readonly kind: 'guards'; readonly restored: readonly string[] }
  | { readonly kind: 'name'; readonly table: string; readonly id: string };

type Founds = {
  audit: AuditFound; custody: CustodyFound; records: RecordsFound; rows: RowsFound; file: FileFound;
  layout: Layout; count: number; numbers: string | null; withdrawn: string[]; checkpoints: Part; guards: Part; name: string | null;
};
export type Found<P extends Piece = Piece> = Founds[P['kind']];

/** Who does pieces. */
export type Runner = {
  /** Has a piece done, by whoever is free; what was asked first is begun first. Rejects with VerifyCancelled, or with what SQLite threw. */
  run<P extends Piece>(piece: P): Promise<Found<P>>;
  /** Pieces of one part that are worth asking for before the first of them is there. */
  readonly ahead: number;
};

/** What was found, in the order of the pieces; `runner.ahead` of them are under way at most, and none is begun after the loop was left. */
export async function* foundInOrder<P extends Piece>({ run, ahead }: Runner, pieces: readonly P[]): AsyncGenerator<Found<P>, void, undefined> {
  const underWay: Promise<Found<P>>[] = [];
  for (let next = 0; next < pieces.length || underWay.length > 0;) {
    while (next < pieces.length && underWay.length < ahead) {
      const asked = run(pieces[next++]!);
      // Whoever waits for it hears of its failure; where nobody does any more, it is no fault of the program.
      asked.catch(() => {});
      underWay.push(asked);
    }
    yield await underWay.shift()!;
  }
}

async function start(db: ReadDb, piece: Piece, pace: Pace): Promise<Found> {
  switch (piece.kind) {
    case 'audit': return auditPiece(db, piece.range, pace);
    case 'custody': return custodyPiece(db, piece.range, piece.heads, pace);
    case 'records': return recordsPiece(db, piece.table, piece.range, pace);
    case 'rows': return rowsPiece(db, piece.table, piece.range, pace);
    case 'file': return filePiece(db, piece.table, piece.sound, pace);
    case 'layout': return layoutPiece(db);
    case 'count': return countPiece(db);
    case 'numbers': return numbersFault(db);
    case 'withdrawn': return withdrawnPiece(db);
    case 'checkpoints': return checkpointsPiece(db, piece.outside, pace);
    case 'guards': return guardsPiece(db, piece.restored);
    case 'name': return namePiece(db, piece.table, piece.id);
  }
}

/** Does a piece with this connection. */
export const doPiece = <P extends Piece>(db: ReadDb, piece: P, pace: Pace): Promise<Found<P>> => start(db, piece, pace) as Promise<Found<P>>;

/** Pieces one after the other with this connection, on the calling thread. */
export function runInTurn(db: ReadDb, pace: Pace): Runner {
  return { ahead: 1, run: (piece) => doPiece(db, piece, pace) };
}
