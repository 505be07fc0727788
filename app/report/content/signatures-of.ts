import type { SignaturesPart } from '../sections/signatures.ts';
import { localDate } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

export const ISSUING_PERSON = 'issuing person';

/** Who stands behind the report, each once in each part: examiners, second persons, and who issues it. */
export function signaturesOf(source: ReportSource): SignaturesPart['signatures'] {
  const { zone } = source.laboratory;
  const signed = new Map<string, { role: string; name: string; at: string }>();
  const sign = (role: string, name: string, at: string): void => {
    const before = signed.get(`${role}\n${name}`);
    if (before === undefined || before.at < at) signed.set(`${role}\n${name}`, { role, name, at });
  };
  const newest = source.stones.flatMap((entry) => entry.conclusions.slice(-1));
  for (const conclusion of newest) sign('examiner', conclusion.by, conclusion.at);
  for (const { confirmation } of newest) if (confirmation?.agrees === true) sign('second person', confirmation.by, confirmation.at);
  if (source.issue !== null) sign(ISSUING_PERSON, source.issue.by, source.at);
  return [...signed.values()].map(({ role, name, at }) => ({ role, name, on: localDate(at, zone) }));
}
