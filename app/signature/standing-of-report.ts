import type { Standing } from './report-verdict.ts';

/** A report as a casebook holds it. `withdrawn`: absent in casebooks that know no withdrawal. */
export type HeldReport = { readonly number: string; readonly revision: number; readonly issuedAt: string; readonly withdrawn?: { readonly at: string; readonly reason: string } | null };

const dayOf = (instant: string): string => instant.slice(0, 10);

/** How a report stands today, as the casebook that issued it tells: withdrawn, replaced, in force, or not held there at all. */
export function standingOfReport(report: Pick<HeldReport, 'number' | 'revision'>, held: readonly HeldReport[]): Standing {
  const of = held.filter((one) => one.number === report.number);
  const own = of.find((one) => one.revision === report.revision);
  if (own === undefined) {
    return { state: 'not-ours', sentence: 'This casebook does not hold it: it was issued from another one, or after this casebook was last restored from a copy.' };
  }
  if (own.withdrawn) return { state: 'withdrawn', sentence: `It was withdrawn on ${dayOf(own.withdrawn.at)}: ${own.withdrawn.reason}` };
  const newest = of.reduce((last, one) => (one.revision > last.revision ? one : last), own);
  if (newest.revision === own.revision) return { state: 'in-force', sentence: 'It is the newest revision that this casebook holds.' };
  const gone = newest.withdrawn ? ', which was withdrawn itself' : '';
  return { state: 'superseded', sentence: `It was replaced by revision ${newest.revision}, issued ${dayOf(newest.issuedAt)}${gone}.` };
}
