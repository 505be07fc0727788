import type { ReportRow } from '../../app/contract/work.ts';
import type { Known, KnownKey } from '../../app/signature/judge-report.ts';
import type { Standing } from '../../app/signature/report-verdict.ts';
import type { ReportStatement } from '../../app/signature/report-statement.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { createReportsStore } from '../../db/store/reports.ts';

const nothingNew = (): never => { throw new Error('knowing reports makes no records'); };

function standingOf({ number, revision }: ReportStatement, own: boolean, reports: readonly ReportRow[]): Standing | null {
  if (!own) return null;
  const of = reports.filter((row) => row.number === number);
  const row = of.find((one) => one.revision === revision);
  if (row === undefined) return { state: 'not-ours', sentence: 'This casebook does not hold it: it was issued from another one, or after this casebook was last restored from a copy.' };
  const newest = Math.max(...of.map((one) => one.revision));
  return newest > revision
    ? { state: 'superseded', sentence: `It was replaced by revision ${newest}, issued ${of.find((one) => one.revision === newest)!.issuedAt.slice(0, 10)}.` }
    : { state: 'in-force', sentence: 'It is the newest revision that this casebook holds.' };
}

/** What a casebook knows of keys and reports: its own, and the keys of others that it keeps. */
export async function knownFor(casebook: Casebook): Promise<Known> {
  const laboratory = await casebook.laboratory.get();
  const own: KnownKey[] = (await casebook.keys.list()).map(({ publicKey }) => ({ publicKey, whose: laboratory?.name ?? 'this laboratory', own: true, distrust: '' }));
  const others: KnownKey[] = (await casebook.keys.known()).map(({ publicKey, laboratory: whose, active }) =>
    ({ publicKey, whose, own: false, distrust: active ? '' : 'This casebook no longer trusts that key.' }));
  const reports = await createReportsStore(casebook.handle, nothingNew).list(null);
  return { keys: [...own, ...others], standing: (statement, isOwn) => standingOf(statement, isOwn, reports) };
}

/** What anyone knows without a casebook. */
export const KNOWN_TO_NOBODY: Known = { keys: [], standing: () => null };
