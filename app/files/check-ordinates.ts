import type { HeaderNumber, TableHeader } from './jcamp-header.ts';
import { CHECK_TOLERANCES } from './reader-defaults.ts';
import type { ReadWarning } from './spectrum-file.ts';

const short = (value: number): string => String(Number(value.toPrecision(8)));

/** Smallest and largest value; y has at least one. */
export function extremes(y: Float64Array): { min: number; max: number } {
  let min = Infinity;
  let max = -Infinity;
  for (const value of y) {
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return { min, max };
}

/** About a hundred times the value found: the writer gave the extremes in per cent. */
const isHundredfold = (said: HeaderNumber | undefined, found: number): boolean =>
  said !== undefined && found !== 0 && Math.abs(said.value / found / 100 - 1) < 0.1;

/**
 * FIRSTY, MAXY and MINY against the ordinates after YFACTOR. `whole` is true where the table holds integers, so that
 * YFACTOR is the rounding of every ordinate. Warnings: 'firsty', 'maxy', 'miny'.
 */
export function checkOrdinates(header: TableHeader, y: Float64Array, whole: boolean): ReadWarning[] {
  const { min, max } = extremes(y);
  const size = Math.max(Math.abs(min), Math.abs(max));
  const differs = (said: HeaderNumber | undefined, found: number): said is HeaderNumber =>
    said !== undefined && Math.abs(said.value - found) > CHECK_TOLERANCES.yQuanta * (whole ? Math.abs(header.yFactor) : 0)
      + CHECK_TOLERANCES.lastDigits * said.digit + CHECK_TOLERANCES.relative * size;
  const warnings: ReadWarning[] = [];
  if (differs(header.firstY, y[0]!)) {
    warnings.push({ code: 'firsty', message: `##FIRSTY says ${header.firstY.value}, the first ordinate is ${short(y[0]!)}.`, line: header.firstY.line });
  }
  if (isHundredfold(header.maxY, max) && isHundredfold(header.minY, min)) {
    warnings.push({ code: 'maxy', message: `##MAXY and ##MINY (${header.maxY!.value}, ${header.minY!.value}) are in per cent, the ordinates are fractions (${short(max)}, ${short(min)}).`, line: header.maxY!.line });
    return warnings;
  }
  if (differs(header.maxY, max)) warnings.push({ code: 'maxy', message: `##MAXY says ${header.maxY.value}, the largest ordinate is ${short(max)}.`, line: header.maxY.line });
  if (differs(header.minY, min)) warnings.push({ code: 'miny', message: `##MINY says ${header.minY.value}, the smallest ordinate is ${short(min)}.`, line: header.minY.line });
  return warnings;
}
