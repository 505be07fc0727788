import type { Known, KnownKey } from '../../app/signature/judge-report.ts';
import { standingOfReport } from '../../app/signature/standing-of-report.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { createReportsStore } from '../../db/store/reports.ts';

const nothingNew = (): never => { throw new Error('knowing reports makes no records'); };

/** What a casebook knows of keys and reports: its own, and the keys of others that it keeps. */
export async function knownFor(casebook: Casebook): Promise<Known> {
  const laboratory = await casebook.laboratory.get();
  const own: KnownKey[] = (await casebook.keys.list()).map(({ publicKey }) => ({ publicKey, whose: laboratory?.name ?? 'this laboratory', own: true, distrust: '' }));
  const others: KnownKey[] = (await casebook.keys.known()).map(({ publicKey, laboratory: whose, active }) =>
    ({ publicKey, whose, own: false, distrust: active ? '' : 'This casebook no longer trusts that key.' }));
  const reports = await createReportsStore(casebook.handle, nothingNew).list(null);
  return { keys: [...own, ...others], standing: (statement, isOwn) => (isOwn ? standingOfReport(statement, reports) : null) };
}

/** What anyone knows without a casebook. */
export const KNOWN_TO_NOBODY: Known = { keys: [], standing: () => null };
