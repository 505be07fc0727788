import { safeName, uniqueNames } from '../bundle/safe-name.ts';
import { sizeText } from '../report/content/raw-record-part.ts';
import type { ReportDocument } from './report-document.ts';

/** A raw record or photograph of the case, in the order in which it is listed. */
export type ListedRecord = {
  readonly id: string; readonly name: string; readonly mediaType: string; readonly size: number; readonly sha256: string;
  /** Numbers of the runs it belongs to; none for a photograph. */
  readonly runs: readonly string[];
};

export type ChosenRecord = { readonly id: string; readonly listed: ReportDocument['records'][number] };

/** Megabyte as sizes are printed: 10⁶ bytes. */
const MEGABYTE = 1_000_000;

/**
 * Which raw records travel inside the report, under which names: files of instruments before photographs, each while it fits into the limit
 * (megabytes, all together). What does not fit is listed with its digest and the reason.
 */
export function chooseAttached(records: readonly ListedRecord[], limitMegabytes: number): ChosenRecord[] {
  const nameOnce = uniqueNames();
  let left = limitMegabytes * MEGABYTE;
  const order = [...records].sort((a, b) => Number(a.runs.length === 0) - Number(b.runs.length === 0));
  return order.map(({ id, name, mediaType, size, sha256, runs }) => {
    const fits = size <= left;
    if (fits) left -= size;
    return {
      id,
      listed: {
        runs: [...runs], name, mediaType, bytes: size, sha256,
        attachedAs: fits ? nameOnce(`${runs[0] ?? 'photo'}-${safeName(name)}`) : null,
        leftOut: fits ? '' : `${sizeText(size)}; with it the attached files would be larger than the ${limitMegabytes} MB that the laboratory allows`,
      },
    };
  });
}
