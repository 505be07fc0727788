import type { XUnit, YUnit } from '../spectra/spectrum.ts';

const INVERSE_CM = /1\s*\/\s*cm|cm\s*(?:\^|\*\*)?\s*\{?\(?\s*[-\u2212\u2013\u207b\u00af]\s*[1\u00b9]|reciprocal\s*cent|inverse\s*cent/;

/** Longer texts are no names of units. */
const WORD_CHARS = 160;

/** The words and the unit they mean, tried in this order. */
const X_WORDS: readonly (readonly [RegExp, XUnit])[] = [
  [/raman\s*[-_ ]?\s*shift|(?:\brel\.?|\brelative|\bdelta|\u0394|\u2206)\s*(?:1\s*\/\s*cm|cm|wave\s*number)|^\s*shift\b/, 'raman-shift'],
  [INVERSE_CM, 'cm-1'],
  [/\u00e5|\u212b|angstrom|\bangstr\b/, 'angstrom'],
  [/(?:\bnm\b|nanomet|_nm\b).*\bvac(?:uum)?\b|\bvac(?:uum)?\b.*(?:\bnm\b|nanomet|_nm\b)/, 'nm-vacuum'],
  [/\bnm\b|nanomet|_nm\b|\(nm\)/, 'nm'],
  [/(?:^|[^a-z])ev\b|electron\s*-?\s*volt|_ev\b/, 'ev'],
  [/micromet|micron|\bum\b|[\u00b5\u03bc]m\b|\bmev\b|\b[kmg]?hz\b|hertz|\bppm\b|gauss|tesla|\bm\s*\/\s*z\b|second|\b(?:[mun\u00b5]?s)\b|minute|degree|\b2\s*-?\s*theta\b|\bkelvin\b|\bthz\b|\bmm\b/, 'other'],
  [/wave\s*-?_?\s*number|kayser/, 'cm-1'],
  [/^\W*(?:pixels?|pix|px|index|channels?|points?|no\.?|nr\.?|#|n|i)\W*$|\bpixel/, 'pixel'],
];

/** Unit of an abscissa from a file's own words ("Wavelength (nm)", "1/CM", "Raman shift/cm-1"); undefined where they name none. */
export function xUnitFromWords(words: string): XUnit | undefined {
  const text = words.slice(0, WORD_CHARS).toLowerCase();
  return X_WORDS.find(([pattern]) => pattern.test(text))?.[1];
}

const PERCENT = /%|per\s*-?cent|\bpct\b/;

const Y_WORDS: readonly (readonly [RegExp, YUnit])[] = [
  [/absorption\s*coef|absorptivity|^\W*(?:alpha|\u03b1|mu)\b.*cm/, 'absorption-coefficient'],
  [/absorban|absorb\.|\babs\.?\b|optical\s*density|\bo\.?d\.?\b|log\s*\(?\s*1\s*\/\s*[rt]|^\W*(?:extin[ck]tion|absorption)\W*$/, 'absorbance'],
  [/count|\bcnts?\b|\bcts\b|\bcps\b|\badu\b|photon/, 'counts'],
  [/kubelka|photoacoustic|volt|watt|\bmw\b|\u00b5w|\bkm\b/, 'other'],
  [/arb|\ba\.\s*u\.?|\ba\.?u\.?\b|\brel\.?\b|relative|intens|signal|fluoresc|luminesc|raman|emission|normali[sz]ed|scope/, 'arbitrary'],
];

/** Unit of an ordinate from a file's own words ("%T", "ABSORBANCE", "[counts]"); undefined where they name none. */
export function yUnitFromWords(words: string): YUnit | undefined {
  const text = words.slice(0, WORD_CHARS).toLowerCase();
  const percent = PERCENT.test(text);
  if (/transmi|%\s*t\b|^\W*t\W*(?:%|$)/.test(text)) return percent ? 'percent-transmittance' : 'transmittance';
  if (/refle[ckx]|remission|%\s*r\b|^\W*r\W*(?:%|$)/.test(text)) return percent ? 'percent-reflectance' : 'reflectance';
  const found = Y_WORDS.find(([pattern]) => pattern.test(text))?.[1];
  if (found) return found;
  if (INVERSE_CM.test(text)) return 'absorption-coefficient';
  return /\w|%/.test(text) && /\(.+\)|\[.+\]/.test(text) ? 'other' : undefined;
}

/** 'percent-…' for a fraction whose values can only be per cent, else the unit itself. */
export function percentUnit(unit: YUnit): YUnit {
  if (unit === 'transmittance') return 'percent-transmittance';
  return unit === 'reflectance' ? 'percent-reflectance' : unit;
}
