import { VOUCHED_TABLES } from '../../../db/ledger/vouched-tables.ts';
import { appendAudit } from '../../../db/ledger/append-audit.ts';
import type { WriteTx } from '../../../db/handle.ts';
import type { Casebook } from '../../../db/open-casebook.ts';

type Column = { readonly name: string; readonly type: string; readonly notnull: number };
type Reference = { readonly from: string; readonly table: string; readonly to: string };

/** A value that the column takes: of an existing row where it points to one, else something invented. */
function valueFor(tx: WriteTx, column: Column, references: readonly Reference[]): string | number | null {
  const points = references.find((one) => one.from === column.name);
  if (points !== undefined) return tx.get<{ value: string }>(`SELECT ${points.to} AS value FROM ${points.table} LIMIT 1`)!.value;
  return column.type.toLowerCase() === 'integer' ? 1 : 'invented';
}

/** Gives every vouched table that is still empty one invented row, with its entry in the audit ledger; returns their names. */
export async function fillEmptyTables(casebook: Casebook, at: string): Promise<string[]> {
  const personId = casebook.handle.read.get<{ id: string }>('SELECT id FROM person LIMIT 1')!.id;
  return casebook.handle.transact((tx) => {
    const filled: string[] = [];
    for (const { table } of VOUCHED_TABLES) {
      if (tx.get(`SELECT 1 FROM ${table} LIMIT 1`) !== undefined) continue;
      const columns = tx.all<Column>('SELECT name, type, "notnull" FROM pragma_table_info(?)', [table]);
      const references = tx.all<Reference>('SELECT "from", "table", "to" FROM pragma_foreign_key_list(?)', [table]);
      tx.run(`INSERT INTO ${table} (${columns.map((one) => one.name).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`, columns.map((one) => valueFor(tx, one, references)));
      filled.push(table);
    }
    if (filled.length > 0) appendAudit(tx, { at, personId, operation: 'tests.fill' }, { subject: 'tables', caseId: null, content: { filled } });
    return filled;
  });
}
