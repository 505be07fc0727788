import type { XUnit, YUnit } from '../spectra/spectrum.ts';
import { formatNumber } from './format-number.ts';
import { extremes } from './check-ordinates.ts';
import type { SpectrumBlock } from './spectrum-file.ts';

/** What the file says beside the points. */
export type JcampMeta = {
  /** For instance "INFRARED SPECTRUM", "RAMAN SPECTRUM", "UV/VIS SPECTRUM", "PHOTOLUMINESCENCE SPECTRUM". */
  readonly dataType: string;
  readonly origin: string;
  readonly owner: string;
  /** Further records, label without "##" and value. */
  readonly records?: readonly (readonly [string, string])[];
};

type Written = Pick<SpectrumBlock, 'title' | 'x' | 'y' | 'xUnit' | 'yUnit' | 'xUnitText' | 'yUnitText'>;

const X_UNIT_WORDS: Partial<Record<XUnit, string>> = { nm: 'NANOMETERS', 'nm-vacuum': 'NANOMETERS IN VACUUM', angstrom: 'ANGSTROM', 'cm-1': '1/CM', ev: 'ELECTRON VOLTS', 'raman-shift': 'RAMAN SHIFT (1/CM)', pixel: 'PIXEL' };
const Y_UNIT_WORDS: Partial<Record<YUnit, string>> = {
  counts: 'COUNTS', absorbance: 'ABSORBANCE', transmittance: 'TRANSMITTANCE', 'percent-transmittance': '% TRANSMITTANCE', reflectance: 'REFLECTANCE',
  'percent-reflectance': '% REFLECTANCE', 'absorption-coefficient': 'ABSORPTION COEFFICIENT (1/CM)', arbitrary: 'ARBITRARY UNITS',
};

/** Value in one line, without what would begin a comment or a record. */
const clean = (text: string): string => text.replace(/[\r\n]+/g, ' ').replaceAll('$$', '$ $').replaceAll('##', '# #').trim();

/** Largest deviation from an even axis that FIRSTX and LASTX may stand for, as a share of the point distance. */
const EVEN_SHARE = 1e-6;

function isEven(x: Float64Array): boolean {
  const n = x.length;
  const step = (x[n - 1]! - x[0]!) / (n - 1);
  return step !== 0 && x.every((v, i) => Math.abs(v - (x[0]! + i * step)) <= EVEN_SHARE * Math.abs(step));
}

/** Lines of at most 80 characters with the X of their first ordinate. */
function evenLines(x: Float64Array, y: Float64Array): string[] {
  const lines: string[] = [];
  let line = '';
  for (let i = 0; i < x.length; i += 1) {
    const ordinate = ` ${formatNumber(y[i]!)}`;
    if (line === '' || line.length + ordinate.length > 80) {
      if (line !== '') lines.push(line);
      line = formatNumber(x[i]!);
    }
    line += ordinate;
  }
  return line === '' ? lines : [...lines, line];
}

/**
 * A JCAMP-DX 5.01 file (Lampen et al., Pure Appl. Chem. 71 (1999) 1549) of one curve in plain numbers (AFFN): XYDATA where the axis
 * is even, XYPOINTS where it is not. Ordinates and uneven abscissae read back exactly; an even axis within 1e-6 of a step.
 */
export function writeJcampDx(block: Written, meta: JcampMeta): string {
  const { x, y } = block;
  const even = x.length > 1 && isEven(x);
  const yRange = extremes(y);
  const xRange = extremes(x);
  const record = (label: string, value: string | number): string => `##${label}= ${typeof value === 'number' ? formatNumber(value) : clean(value)}`;
  const head = [
    record('TITLE', block.title),
    record('JCAMP-DX', '5.01'),
    record('DATA TYPE', meta.dataType),
    record('DATA CLASS', even ? 'XYDATA' : 'XYPOINTS'),
    record('ORIGIN', meta.origin),
    record('OWNER', meta.owner),
    ...(meta.records ?? []).map(([label, value]) => record(clean(label).replaceAll('=', ' '), value)),
    record('XUNITS', X_UNIT_WORDS[block.xUnit] ?? block.xUnitText),
    record('YUNITS', Y_UNIT_WORDS[block.yUnit] ?? block.yUnitText),
    record('XFACTOR', 1),
    record('YFACTOR', 1),
    record('FIRSTX', x[0] ?? 0),
    record('LASTX', x[x.length - 1] ?? 0),
    record('MAXX', xRange.max),
    record('MINX', xRange.min),
    record('MAXY', yRange.max),
    record('MINY', yRange.min),
    record('FIRSTY', y[0] ?? 0),
    record('NPOINTS', x.length),
  ];
  const table = even
    ? ['##XYDATA= (X++(Y..Y))', ...evenLines(x, y)]
    : ['##XYPOINTS= (XY..XY)', ...Array.from(x, (v, i) => `${formatNumber(v)}, ${formatNumber(y[i]!)}`)];
  return `${[...head, ...table, '##END='].join('\r\n')}\r\n`;
}
