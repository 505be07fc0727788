import type { Luminescence } from './data.ts';
import type { Reading } from './pipeline.ts';

export type Score = {
  readonly precision: number;
  /** Strong (over 500 counts, narrower than 6 nm) lines that stand alone, and how many of them were found. */
  readonly isolated: number;
  readonly found: number;
  /** Those of them that are lines of the table, and how many were named. */
  readonly lines: number;
  readonly named: number;
  /** Distance from a fitted centre to the nearest planted one, nm. */
  readonly centreMedianNm: number;
};

/** What the curves gave against what was planted in them. */
export function scoreReadings(readings: readonly Reading[], { truth }: Pick<Luminescence, 'truth'>): Score {
  let all = 0, wrong = 0, isolated = 0, found = 0, lines = 0, named = 0;
  const distances: number[] = [];
  readings.forEach((reading, k) => {
    const { peaks } = truth[k]!;
    for (const at of reading.centers) {
      all++;
      if (!peaks.some((peak) => Math.abs(at - peak.center) < Math.max(1, 0.5 * peak.fwhm))) wrong++;
    }
    for (const peak of peaks) {
      if (peak.height <= 500 || peak.fwhm >= 6) continue;
      if (peaks.some((other) => other !== peak && Math.abs(other.center - peak.center) <= 2 * Math.max(other.fwhm, peak.fwhm))) continue;
      isolated++;
      if (reading.centers.some((at) => Math.abs(at - peak.center) < Math.max(0.4, 0.25 * peak.fwhm))) found++;
      if (peak.line < 0) continue;
      lines++;
      if (reading.match.includes(peak.line)) named++;
    }
    for (const [, , at] of reading.fit) distances.push(Math.min(...peaks.map((peak) => Math.abs(at - peak.center))));
  });
  distances.sort((a, b) => a - b);
  return { precision: 1 - wrong / Math.max(1, all), isolated, found, lines, named, centreMedianNm: distances[distances.length >> 1] ?? Number.NaN };
}
