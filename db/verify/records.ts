import type { Layout } from './layout.ts';
import type { Vouched } from './ledgers.ts';
import { faultyPart, soundPart, type Part } from './part.ts';
import { foundInOrder, type Runner } from './pieces.ts';
import { rangesOf } from './ranges.ts';
import type { FoundRecord, RecordTable } from './records-piece.ts';

/** Digests of a record that the ledger must name, in the order in which a piece tells them. */
type Named = (key: string, vouched: Vouched) => readonly string[] | undefined;

const byId: Named = (key, vouched) => {
  const digest = vouched.byId.get(key);
  return digest === undefined ? undefined : [digest];
};

const asReport: Named = (key, vouched) => {
  const digests = vouched.reports.get(key);
  return digests === undefined ? undefined : [digests.model, digests.pdf];
};

/** The row's own digest, which the ledger vouches for, holds its id; and that is the digest of its bytes. */
const byOwnId: Named = () => [];

/** What does not fit a record, or null. */
function faultOf({ key, name, wrong, digests }: FoundRecord, named: Named, vouched: Vouched): string | null {
  if (wrong !== null) return wrong;
  const known = named(key, vouched);
  if (known === undefined) return !vouched.complete ? null : `${name} is not named in the audit ledger: it was put in from outside.`;
  return known.every((digest, i) => digest === digests[i]) ? null : `${name} was replaced: the audit ledger names another digest.`;
}

/** Checks the records of a table in the order they were written, and stops at the first that does not fit. */
async function eachRecord({ bounds }: Layout, part: Part['part'], table: RecordTable, named: Named, vouched: Vouched, runner: Runner): Promise<Part> {
  let checked = 0;
  const pieces = rangesOf(bounds[table]!, RECORDS_A_PIECE).map((range) => ({ kind: 'records', table, range }) as const);
  for await (const { records } of foundInOrder(runner, pieces)) {
    for (const record of records) {
      const fault = faultOf(record, named, vouched);
      if (fault !== null) return faultyPart(part, checked, fault);
      checked += 1;
    }
  }
  return soundPart(part, checked);
}

/** Records are large: a few to each piece. */
const RECORDS_A_PIECE = 50;

/** Withdrawn reports are kept as they were and are no fault: the part says which they are. */
async function withWithdrawn(part: Part, runner: Runner): Promise<Part> {
  const names = await runner.run({ kind: 'withdrawn' });
  return names.length === 0 ? part : { ...part, note: [part.note, `Withdrawn, and kept as printed: ${names.join(', ')}.`].filter((text) => text !== undefined).join(' ') };
}

/** Recomputes the digests of raw records, spectra, issued reports and bundles taken in, and compares them with what the audit ledger says. */
export async function verifyRecords(layout: Layout, vouched: Vouched, runner: Runner): Promise<Part[]> {
  return [
    await eachRecord(layout, 'raw records', 'raw_record', byId, vouched, runner),
    await eachRecord(layout, 'spectra', 'spectrum', byId, vouched, runner),
    await withWithdrawn(await eachRecord(layout, 'issued reports', 'report', asReport, vouched, runner), runner),
    await eachRecord(layout, 'bundles taken in', 'sealed_bundle', byOwnId, vouched, runner),
  ];
}
