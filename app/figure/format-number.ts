/** Between groups of three digits (ISO 80000-1 asks for a small space); no-break, because the bundled mono has no thin space. */
export const GROUP_SPACE = '\u00a0';
export const MINUS = '\u2212';

/**
 * A number as it stands in a figure: fixed decimals, a true minus sign, a space between groups of three
 * from six digits on (wavenumbers stay whole). Never '-0'. Not finite becomes an en dash.
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const [whole = '0', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.length < 6 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, GROUP_SPACE);
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && /[1-9]/.test(digits) ? MINUS + digits : digits;
}

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  '-': '⁻', '0': '⁰', '1': '¹', '2': '²', '3': '³', '4': '⁴', '5': '⁵', '6': '⁶', '7': '⁷', '8': '⁸', '9': '⁹',
};

/** '10³' for 3, '10⁻⁶' for -6. */
export const powerOfTen = (exponent: number): string => `10${[...String(exponent)].map((c) => SUPERSCRIPTS[c] ?? c).join('')}`;
