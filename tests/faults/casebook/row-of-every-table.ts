import { createHash } from 'node:crypto';
import { VOUCHED_TABLES } from '../../../db/ledger/vouched-tables.ts';
import { appendAudit } from '../../../db/ledger/append-audit.ts';
import type { WriteTx } from '../../../db/handle.ts';
import type { Casebook } from '../../../db/open-casebook.ts';
import { signedOf, type CheckpointStatement } from '../../../app/signature/checkpoint-statement.ts';
import { statementBytes } from '../../../app/signature/signed-statement.ts';
import { publicKeyOf, signWith } from '../../../main/keys/ed25519.ts';
import { makeOpenKey } from '../../../main/keys/make-open-key.ts';

const SEED = new Uint8Array(32).fill(4);

type Column = { readonly name: string; readonly type: string; readonly notnull: number };
type Reference = { readonly from: string; readonly table: string; readonly to: string };

/** A bundle is known by the digest of its bytes, which verifying recomputes. */
const BUNDLE: Readonly<Record<string, string | number>> = { id: createHash('sha256').update(new Uint8Array([1, 2, 3])).digest('hex'), size: 3 };

/** A value that the column takes: of an existing row where it points to one, else something invented. */
function valueFor(tx: WriteTx, column: Column, references: readonly Reference[]): string | number | Uint8Array | null {
  const points = references.find((one) => one.from === column.name);
  if (points !== undefined) return tx.get<{ value: string }>(`SELECT ${points.to} AS value FROM ${points.table} LIMIT 1`)!.value;
  if (column.type.toLowerCase() === 'blob') return new Uint8Array([1, 2, 3]);
  return column.type.toLowerCase() === 'integer' ? 1 : 'invented';
}

/** A key, and a checkpoint that it really signed: an invented one would be found out by its signature. */
async function signCheckpoint(casebook: Casebook, at: string, personId: string): Promise<void> {
  const keyId = await makeOpenKey(casebook, { at, personId, operation: 'keys.create' }, SEED);
  const statement: CheckpointStatement = { statement: 'culet-checkpoint-1', laboratory: 'Invented Laboratory', begun: at, at, why: 'asked', ...await casebook.checkpoints.heads() };
  const signed = signedOf(statement, { publicKey: publicKeyOf(SEED), signature: signWith(SEED, statementBytes(statement)) });
  await casebook.checkpoints.keep({ at, personId, operation: 'checkpoints.make' }, keyId, 'checkpoint', signed);
}

/** Gives every vouched table that is still empty one invented row, with its entry in the audit ledger; returns their names. */
export async function fillEmptyTables(casebook: Casebook, at: string): Promise<string[]> {
  const personId = casebook.handle.read.get<{ id: string }>('SELECT id FROM person LIMIT 1')!.id;
  await signCheckpoint(casebook, at, personId);
  return casebook.handle.transact((tx) => {
    const filled: string[] = [];
    for (const { table } of VOUCHED_TABLES) {
      if (tx.get(`SELECT 1 FROM ${table} LIMIT 1`) !== undefined) continue;
      const columns = tx.all<Column>('SELECT name, type, "notnull" FROM pragma_table_info(?)', [table]);
      const references = tx.all<Reference>('SELECT "from", "table", "to" FROM pragma_foreign_key_list(?)', [table]);
      tx.run(`INSERT INTO ${table} (${columns.map((one) => one.name).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`, columns.map((one) => (table === 'sealed_bundle' ? BUNDLE[one.name] : undefined) ?? valueFor(tx, one, references)));
      filled.push(table);
    }
    if (filled.length > 0) appendAudit(tx, { at, personId, operation: 'tests.fill' }, { subject: 'tables', caseId: null, content: { filled } });
    return filled;
  });
}
