import { VOUCHED_TABLES, type VouchedTable } from '../ledger/vouched-tables.ts';
import type { Layout } from './layout.ts';
import type { Vouched } from './ledgers.ts';
import { ID_WORDS, keyOf, ODD } from './packed-rows.ts';
import { faultyPart, soundPart, type Part } from './part.ts';
import { foundInOrder, type Runner } from './pieces.ts';
import { rangesOf } from './ranges.ts';
import type { RowsFound } from './rows-piece.ts';

const PART = 'facts and findings';

/** How a row is called in a sentence that begins with it. */
async function nameOf(runner: Runner, table: VouchedTable, id: string): Promise<string> {
  return `The ${await runner.run({ kind: 'name', table: table.table, id }) ?? `${table.noun} ${id}`}`;
}

/** `seen`: 1 at the place of every voucher whose row is there. */
type Tally = { checked: number; older: number; readonly seen: Uint8Array };

const idIn = (key: string): string => key.slice(key.indexOf('/') + 1);

/** What does not fit among the rows of a piece, or null. Those written before entries vouched for rows are counted by themselves. */
async function judge(runner: Runner, table: VouchedTable, { rows: found }: RowsFound, vouched: Vouched, tally: Tally): Promise<string | null> {
  const { rows } = vouched;
  const older = vouched.older === null ? Number.MAX_SAFE_INTEGER : vouched.older.get(table.table) ?? 0;
  let odd = 0;
  for (let i = 0; i < found.count; i++) {
    const key = found.tables[i] === ODD ? found.odd[odd++]! : null;
    const name = (): Promise<string> => nameOf(runner, table, idIn(key ?? keyOf(found.tables[i]!, found.ids, ID_WORDS * i)));
    const place = rows.placeOf(found, i, key);
    if (place < 0) {
      if (found.numbers[i]! > older) return `${await name()} is not named in the audit ledger: it was put in from outside.`;
      tally.older += 1;
      continue;
    }
    tally.seen[place] = 1;
    if (!rows.fits(place, found, i)) return `${await name()} was changed behind the program’s back: it is not what entry ${rows.seqAt(place)} of the audit ledger vouches for.`;
    tally.checked += 1;
  }
  return null;
}

/** The first vouched row that is gone. */
function gone({ seen }: Tally, { rows }: Vouched): string | null {
  if (!seen.includes(0)) return null;
  let place = 0;
  for (const key of rows.keys()) {
    const table = seen[place] === 1 ? undefined : VOUCHED_TABLES.find((one) => key.startsWith(`${one.table}/`));
    if (table !== undefined) return `${/^[aeiou]/i.test(table.noun) ? 'An' : 'A'} ${table.noun} that entry ${rows.seqAt(place)} of the audit ledger vouches for is no longer there (${idIn(key)}).`;
    place += 1;
  }
  return null;
}

const olderNote = (n: number): string =>
  `${n === 1 ? 'One record was' : `${n.toLocaleString('en')} records were`} written before the audit ledger vouched for records: not vouched for, and so not compared.`;

/**
 * Compares every row of the tables that hold records with the newest digest the audit ledger vouches for, and names the first that was
 * changed, is gone, or was put in from outside.
 */
export async function verifyRows({ bounds }: Layout, vouched: Vouched, runner: Runner): Promise<Part> {
  if (!vouched.complete) return { ...soundPart(PART, 0), note: 'Not compared: the audit ledger, which vouches for them, does not hold.' };
  const tally: Tally = { checked: 0, older: 0, seen: new Uint8Array(vouched.rows.size) };
  const pieces = VOUCHED_TABLES.flatMap(({ table }) => rangesOf(bounds[table]!).map((range) => ({ kind: 'rows', table, range }) as const));
  for await (const found of foundInOrder(runner, pieces)) {
    const fault = await judge(runner, VOUCHED_TABLES.find(({ table }) => table === found.table)!, found, vouched, tally);
    if (fault !== null) return faultyPart(PART, tally.checked, fault);
  }
  const missing = gone(tally, vouched) ?? await runner.run({ kind: 'numbers' });
  if (missing !== null) return faultyPart(PART, tally.checked, missing);
  return tally.older === 0 ? soundPart(PART, tally.checked) : { ...soundPart(PART, tally.checked), note: olderNote(tally.older) };
}
