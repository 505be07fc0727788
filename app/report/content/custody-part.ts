import { custodyTold, custodyWeighing } from '../custody-words.ts';
import type { CustodyPart } from '../sections/custody.ts';
import { localTime } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

/** The custody log of the case, in the ledger's order. */
export function custodyParts(source: ReportSource): CustodyPart['entries'] {
  return source.custody.map((entry) => ({
    at: localTime(entry.at, source.laboratory.zone), item: entry.itemLabel, what: custodyTold(entry.content), who: entry.person, weight: custodyWeighing(entry.content), hash: entry.hash,
  }));
}
