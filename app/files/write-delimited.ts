import type { XUnit, YUnit } from '../spectra/spectrum.ts';
import { formatNumber } from './format-number.ts';
import type { SpectrumBlock } from './spectrum-file.ts';

type Written = Pick<SpectrumBlock, 'title' | 'x' | 'y' | 'xUnit' | 'yUnit' | 'xUnitText' | 'yUnitText'>;

const X_NAMES: Partial<Record<XUnit, string>> = { nm: 'Wavelength (nm)', 'nm-vacuum': 'Wavelength in vacuum (nm)', angstrom: 'Wavelength (angstrom)', 'cm-1': 'Wavenumber (cm-1)', ev: 'Energy (eV)', 'raman-shift': 'Raman shift (cm-1)', pixel: 'Pixel' };
const Y_NAMES: Partial<Record<YUnit, string>> = {
  counts: 'counts', absorbance: 'absorbance', transmittance: 'transmittance', 'percent-transmittance': '% transmittance', reflectance: 'reflectance',
  'percent-reflectance': '% reflectance', 'absorption-coefficient': 'absorption coefficient, cm-1', arbitrary: 'arbitrary units',
};

/** A field of CSV; a leading =, +, - or @ of a name would be run as a formula by spreadsheets. */
function field(text: string): string {
  const safe = text.replace(/[\r\n]+/g, ' ').replace(/^(?=[=+\-@])/, ' ');
  return /[",;\t]/.test(safe) ? `"${safe.replaceAll('"', "'")}"` : safe;
}

const sameAxis = (a: Written, b: Written): boolean => a.xUnit === b.xUnit && a.x.length === b.x.length && a.x.every((v, i) => v === b.x[i]);

const xName = (b: Written): string => X_NAMES[b.xUnit] ?? (b.xUnitText === '' ? 'x' : b.xUnitText);
const yName = (b: Written): string => {
  const unit = Y_NAMES[b.yUnit] ?? b.yUnitText;
  return unit === '' ? b.title || 'y' : `${b.title || 'y'} (${unit})`;
};

/**
 * Curves as CSV: comma, decimal point, one line of names, CRLF (RFC 4180). Curves on one common axis share its column; others
 * bring a column of their own, and shorter ones end in empty fields.
 */
export function writeDelimited(blocks: readonly Written[]): string {
  const [head] = blocks;
  if (!head) return '';
  const shared = blocks.every((b) => sameAxis(head, b));
  const columns: { name: string; values: Float64Array }[] = shared
    ? [{ name: xName(head), values: head.x }, ...blocks.map((b) => ({ name: yName(b), values: b.y }))]
    : blocks.flatMap((b) => [{ name: xName(b), values: b.x }, { name: yName(b), values: b.y }]);
  const rows = Math.max(...blocks.map((b) => b.x.length));
  const lines = [columns.map((c) => field(c.name)).join(',')];
  for (let i = 0; i < rows; i += 1) lines.push(columns.map((c) => (i < c.values.length ? formatNumber(c.values[i]!) : '')).join(','));
  return `${lines.join('\r\n')}\r\n`;
}
