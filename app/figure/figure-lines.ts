import { convertPosition } from '../spectra/convert-axis.ts';
import type { DiamondRamanResult, PeakResult } from '../spectra/analysis.ts';
import { STATABLE_X_UNITS } from '../spectra/spectrum.ts';
import type { StatableXUnit, XUnit } from '../spectra/spectrum.ts';
import type { CentreLabelOf } from './centre-label.ts';
import { AXIS_STYLE } from './figure-axes.ts';
import type { FigureAxis, FigureLine, Ink } from './figure-model.ts';
import { formatNumber } from './format-number.ts';

/** A reference position to draw beside what was found. */
export type ReferenceLine = { readonly at: number; readonly unit: StatableXUnit; readonly name: string; readonly ink?: Ink; readonly dash?: boolean; readonly importance?: number };

export type LineSources = {
  readonly axis: FigureAxis;
  readonly laserNm?: number;
  readonly peaks?: readonly PeakResult[];
  readonly diamondRaman?: DiamondRamanResult | null;
  readonly lines?: readonly ReferenceLine[];
  readonly centreLabel: CentreLabelOf;
};

/** Lines of one name that lie within this share of the axis are one label: doublets. */
const PAIR_SHARE = 0.005;
/** Nearer than this to the diamond line, nm, a peak is that line and gets no second name. */
const SAME_LINE_NM = 0.6;

const isLight = (unit: XUnit): unit is StatableXUnit => (STATABLE_X_UNITS as readonly string[]).includes(unit);

function onAxis(at: number, unit: XUnit, sources: LineSources): number {
  if (unit === sources.axis) return at;
  return isLight(unit) ? convertPosition(at, unit, sources.axis, sources.laserNm === undefined ? {} : { laserNm: sources.laserNm }) : Number.NaN;
}

/** The diamond Raman line where it was found, or dashed where it should have been. One decimal more than other lines: it is the check. */
function diamondLine(sources: LineSources): FigureLine[] {
  const raman = sources.diamondRaman;
  if (raman === null || raman === undefined) return [];
  const found = raman.present && raman.foundNm !== null;
  const at = sources.axis === 'raman-shift' && found && raman.shiftCm1 !== null ? raman.shiftCm1 : onAxis(found ? raman.foundNm! : raman.expectedNm, 'nm', sources);
  if (!Number.isFinite(at)) return [];
  const decimals = AXIS_STYLE[sources.axis].decimals + (AXIS_STYLE[sources.axis].unit === 'nm' ? 1 : 0);
  return [{ at, name: found ? 'diamond Raman' : 'diamond Raman expected', position: formatNumber(at, decimals), ink: 'accent', dash: !found, importance: 3 }];
}

/** Name and ink of a peak; where neighbours cannot be told apart both are named and neither colours the line. */
function labelOf(peak: PeakResult, centreLabel: CentreLabelOf): { name: string; ink: Ink; speaks: boolean } | null {
  if (peak.centre === null || peak.sidebandOf !== null) return null;
  const own = centreLabel(peak.centre) ?? { name: peak.centre, ink: 'ink' as const };
  const others = peak.ambiguousWith.map((id) => centreLabel(id) ?? { name: id, ink: 'ink' as const }).filter((other) => other.name !== own.name);
  const speaks = [own, ...others].some((label) => label.ink !== 'ink');
  if (others.length === 0) return { ...own, speaks };
  const names = [...new Set([own.name, ...others.map((other) => other.name)])].filter((name) => name !== '');
  return { name: names.slice(0, 2).join(' or '), ink: others.every((other) => other.ink === own.ink) ? own.ink : 'ink', speaks };
}

function mergePairs(lines: readonly FigureLine[], near: number): FigureLine[] {
  const out: FigureLine[] = [];
  let members: FigureLine[] = [];
  const flush = (): void => {
    const first = members[0];
    if (first === undefined) return;
    const at = members.reduce((sum, line) => sum + line.at, 0) / members.length;
    out.push({ ...first, at, position: members.map((line) => line.position).join('/'), importance: Math.max(...members.map((line) => line.importance ?? 0)) });
  };
  for (const line of [...lines].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.at - b.at))) {
    const last = members.at(-1);
    if (last !== undefined && last.name === line.name && line.name !== '' && line.ink === last.ink && line.at - last.at <= near) members.push(line);
    else {
      flush();
      members = [line];
    }
  }
  flush();
  return out.sort((a, b) => a.at - b.at);
}

/** The named lines of a figure within the axis, ascending: diamond line, named peaks, reference positions. */
export function figureLines(sources: LineSources, range: readonly [number, number]): FigureLine[] {
  const low = Math.min(...range);
  const high = Math.max(...range);
  const diamond = diamondLine(sources);
  const foundNm = sources.diamondRaman?.foundNm ?? Number.NaN;
  const strongest = Math.max(1e-300, ...(sources.peaks ?? []).map((peak) => peak.snr));
  const named = (sources.peaks ?? []).flatMap((peak): FigureLine[] => {
    const label = labelOf(peak, sources.centreLabel);
    const at = onAxis(peak.position, peak.unit, sources);
    if (label === null || !Number.isFinite(at)) return [];
    if (peak.unit === 'nm' && Math.abs(peak.position - foundNm) < SAME_LINE_NM && diamond.length > 0 && label.ink === 'accent') return [];
    // What may speak for something outweighs what does not; within each, the stronger line.
    const importance = (label.speaks ? 2 : 1) + (0.9 * Math.max(0, peak.snr)) / strongest;
    return [{ at, name: label.name, position: formatNumber(at, AXIS_STYLE[sources.axis].decimals), ink: label.ink, importance }];
  });
  const references = (sources.lines ?? []).flatMap((line): FigureLine[] => {
    const at = onAxis(line.at, line.unit, sources);
    return Number.isFinite(at) ? [{ at, name: line.name, position: formatNumber(at, AXIS_STYLE[sources.axis].decimals), ink: line.ink ?? 'ink2', dash: line.dash ?? true, importance: line.importance ?? 0.5 }] : [];
  });
  const inside = (line: FigureLine): boolean => line.at >= low && line.at <= high;
  return [...diamond.filter(inside), ...mergePairs(named.filter(inside), PAIR_SHARE * (high - low)), ...references.filter(inside)].sort((a, b) => a.at - b.at);
}
