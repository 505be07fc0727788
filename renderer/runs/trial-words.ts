import type { FileTrial } from '../../app/contract/work.ts';
import { AXIS_STYLE } from '../../app/figure/figure-axes.ts';
import type { XUnit } from '../../app/spectra/spectrum.ts';

const FORMAT_WORDS: Readonly<Record<string, string>> = { 'jcamp-dx': 'JCAMP-DX', 'delimited-text': 'text in columns', spc: 'SPC' };
export const formatWords = (format: string | null): string => (format === null ? 'not readable' : FORMAT_WORDS[format] ?? format);

const UNIT_WORDS: Readonly<Record<XUnit, string>> = {
  nm: 'nm', 'nm-vacuum': 'nm in vacuum', angstrom: 'Å', 'cm-1': 'cm⁻¹', ev: 'eV', 'raman-shift': 'cm⁻¹ shift', pixel: 'pixel', other: 'other unit', unstated: 'unit not said',
};
export const unitWords = (unit: XUnit): string => UNIT_WORDS[unit];

const place = (value: number): string => (Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(7)))).replace('-', '−');

/** "1 024 points, 400.1 to 850.3 nm" */
export function blockWords(block: FileTrial['blocks'][number]): string {
  const unit = block.xUnit === 'other' && block.xUnitText !== '' ? block.xUnitText : UNIT_WORDS[block.xUnit];
  return `${block.points.toLocaleString('en').replaceAll(',', '\u00a0')} points, ${place(block.firstX)} to ${place(block.lastX)}${block.xUnit === 'unstated' ? ', ' : ' '}${unit}`;
}

/** True where the user must say the unit before the run can be kept, or has said it. */
export const asksUnit = (trial: FileTrial | undefined, stated: boolean): boolean => stated || (trial?.blocks.some((block) => block.xUnit === 'unstated') ?? false);
export const unitIsOpen = (trial: FileTrial | undefined): boolean => trial?.blocks.some((block) => block.xUnit === 'unstated') ?? false;

/** The units that can be stated, as people say them. */
export const STATABLE_WORDS = {
  nm: 'nanometres in air, nm', 'nm-vacuum': 'nanometres in vacuum, nm', angstrom: 'ångström, Å', 'cm-1': `wavenumber, ${AXIS_STYLE['cm-1'].unit}`, ev: 'photon energy, eV', 'raman-shift': 'Raman shift, cm⁻¹',
} as const;
