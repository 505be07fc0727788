import type { CheckpointStatement, Head, SignedCheckpoint } from '../../app/signature/checkpoint-statement.ts';
import { publicKeyFromHex } from '../../app/signature/fingerprint.ts';
import { statementBytes } from '../../app/signature/signed-statement.ts';
import { verifySignature } from '../../app/signature/verify-signature.ts';
import type { ReadDb } from '../handle.ts';
import { statementFrom } from '../store/checkpoints.ts';
import { signingKeys } from '../store/keys.ts';
import { begunAt } from '../store/laboratory.ts';
import { faultyPart, soundPart, type Pace, type Part } from './part.ts';

const PART = 'checkpoints';

/** Head of the audit ledger that was noted outside the casebook without a signature, when it was closed. */
export type RememberedHead = { readonly begun: string; readonly at: string; readonly audit: Head };

/** What is known of the ledgers from outside the file: checkpoints that were kept elsewhere, and what was noted at the last closing. */
export type Outside = { readonly kept: readonly SignedCheckpoint[]; readonly remembered: RememberedHead | null };
export const NOTHING_OUTSIDE: Outside = { kept: [], remembered: null };

const LEDGERS = [['audit', 'audit_entry', 'audit ledger'], ['custody', 'custody_entry', 'custody ledger']] as const;

const hashOf = (db: ReadDb, table: string, seq: number): string | undefined => db.get<{ hash: string }>(`SELECT hash FROM ${table} WHERE seq = ?`, [seq])?.hash;

/** What does not fit between a checkpoint and the ledgers; `fitted` is the last entry of each that an earlier checkpoint confirmed. */
function against(db: ReadDb, statement: CheckpointStatement, fitted: Record<'audit' | 'custody', number>): string | null {
  for (const [name, table, words] of LEDGERS) {
    const { seq, hash } = statement[name];
    if (seq === 0) continue;
    const there = hashOf(db, table, seq);
    if (there === undefined) return `Entry ${seq} of the ${words}, which the checkpoint of ${statement.at} names, is not there: the newest entries were cut off, or this is an older copy of the casebook.`;
    if (there !== hash) return `The ${words} was written anew between entry ${fitted[name] + 1} and entry ${seq}: entry ${seq} is not the one that the checkpoint of ${statement.at} was signed over.`;
    fitted[name] = Math.max(fitted[name], seq);
  }
  return null;
}

/** Up to which entry the program itself put older books back in the place of newer ones, as the ledger says. */
function replacedUpTo(db: ReadDb): number {
  return db.get<{ n: number | null }>(
    `SELECT max(json_extract(content, '$.replaced')) AS n FROM audit_entry WHERE operation = 'casebook.restore' AND json_valid(content)`)?.n ?? 0;
}

type Row = { row_number: number; at: string; statement: string; key_id: string; signature: string };

/** Checks every checkpoint in the casebook, and what is known from outside, against the keys and the ledgers, and names the first that does not fit. */
export async function checkpointsPiece(db: ReadDb, { kept, remembered }: Outside, pace: Pace): Promise<Part> {
  const keys = new Map(signingKeys(db).map((key) => [key.id, publicKeyFromHex(key.publicKey)]));
  const fitted = { audit: 0, custody: 0 };
  let checked = 0;
  for (let after = Number.MIN_SAFE_INTEGER; ;) {
    const row = db.get<Row>('SELECT rowid AS row_number, at, statement, key_id, signature FROM checkpoint WHERE rowid > ? ORDER BY rowid LIMIT 1', [after]);
    if (row === undefined) break;
    const statement = statementFrom(row.statement);
    const key = keys.get(row.key_id);
    const signed = statement !== null && key !== undefined && key !== null && /^[0-9a-f]{128}$/.test(row.signature)
      && verifySignature(key, statementBytes(statement), Buffer.from(row.signature, 'hex'));
    if (!signed) return faultyPart(PART, checked, `The checkpoint of ${row.at} is not signed by the laboratory’s key: it or the key was altered.`);
    const fault = against(db, statement, fitted);
    if (fault !== null) return faultyPart(PART, checked, fault);
    after = row.row_number;
    checked += 1;
    await pace(1);
  }
  return outside(db, { kept, remembered }, new Set([...keys.values()].filter((key) => key !== null).map((key) => Buffer.from(key).toString('hex'))), checked, fitted);
}

function outside(db: ReadDb, { kept, remembered }: Outside, ownKeys: ReadonlySet<string>, before: number, fitted: Record<'audit' | 'custody', number>): Part {
  const begun = begunAt(db);
  const replaced = replacedUpTo(db);
  let checked = before;
  let excused = 0;
  for (const { statement, publicKey } of kept) {
    if (statement.begun !== begun) continue;
    if (!ownKeys.has(publicKey)) return faultyPart(PART, checked, `The checkpoint of ${statement.at} that was kept apart is signed by a key that this casebook does not have: the key was exchanged, or this is an older copy.`);
    const fault = against(db, statement, fitted);
    if (fault === null) checked += 1;
    else if (statement.audit.seq <= replaced) excused += 1;
    else return faultyPart(PART, checked, fault);
  }
  if (remembered !== null && remembered.begun === begun && remembered.audit.seq > replaced && hashOf(db, 'audit_entry', remembered.audit.seq) !== remembered.audit.hash) {
    return faultyPart(PART, checked, `When this casebook was closed here on ${remembered.at}, its audit ledger had ${remembered.audit.seq} entries that ended otherwise: this is an older copy, or entries were cut off or written anew.`);
  }
  const note = excused === 0 ? undefined : `${excused === 1 ? 'One checkpoint that was kept apart is' : `${excused} checkpoints that were kept apart are`} of a state that was replaced by a backup; the audit ledger says by whom.`;
  return note === undefined ? soundPart(PART, checked) : { ...soundPart(PART, checked), note };
}
