import type { Rgb } from './drawing.ts';

/** The strip is grey outside: the eye's ends are soft, 380–780 nm is where CIE 1931 colour matching is tabulated for practice (CIE 15). */
export const VISIBLE_NM: readonly [number, number] = [380, 780];

/** A bell with its own width on each side. */
function lobe(nm: number, centre: number, below: number, above: number): number {
  const t = (nm - centre) / (nm < centre ? below : above);
  return Math.exp(-0.5 * t * t);
}

/**
 * CIE 1931 2° colour matching functions x̄ ȳ z̄ at a wavelength in nm, by the multi-lobe fit of
 * Wyman, Sloan & Shirley, Journal of Computer Graphics Techniques 2(2) (2013) 1–11, eq. 4 (constants from memory, checked against CIE values).
 */
export function colourMatching(nm: number): readonly [number, number, number] {
  return [
    1.056 * lobe(nm, 599.8, 37.9, 31.0) + 0.362 * lobe(nm, 442.0, 16.0, 26.7) - 0.065 * lobe(nm, 501.1, 20.4, 26.2),
    0.821 * lobe(nm, 568.8, 46.9, 40.5) + 0.286 * lobe(nm, 530.9, 16.3, 31.1),
    1.217 * lobe(nm, 437.0, 11.8, 36.0) + 0.681 * lobe(nm, 459.0, 26.0, 13.8),
  ];
}

/** XYZ to linear sRGB, IEC 61966-2-1. */
const toLinear = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [
  3.2406 * x - 1.5372 * y - 0.4986 * z,
  -0.9689 * x + 1.8758 * y + 0.0415 * z,
  0.0557 * x - 0.204 * y + 1.057 * z,
];

/** Transfer function of sRGB, IEC 61966-2-1. */
const encode = (v: number): number => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);

const hex = (v: number): string => Math.round(255 * Math.max(0, Math.min(1, v))).toString(16).padStart(2, '0');

/** Beyond, the hue hardly changes (CIE 1931 chromaticity stands still from 700 nm on), and the tails of the fit would drift to brown. */
const HUE_ENDS_NM = 660;

/** How far the strip fades towards the ends of sight, nm, so that violet and deep red end dark (judgement, for the eye only). */
const FADE_NM = { violet: 40, red: 130 } as const;
const DARKEST = 0.25;

/**
 * The screen colour of one wavelength, or null outside the visible. Spectral colours lie outside sRGB: negative parts are cut,
 * each colour is made as bright as the screen allows, and the ends fade. A picture of the order of colours, no colorimetry.
 */
export function visibleColour(nm: number): Rgb | null {
  if (!(nm >= VISIBLE_NM[0] && nm <= VISIBLE_NM[1])) return null;
  const linear = toLinear(colourMatching(Math.min(nm, HUE_ENDS_NM))).map((v) => Math.max(0, v));
  const brightest = Math.max(...linear, 1e-12);
  const toEnd = Math.min(1, (nm - VISIBLE_NM[0]) / FADE_NM.violet, (VISIBLE_NM[1] - nm) / FADE_NM.red);
  const fade = DARKEST + (1 - DARKEST) * toEnd;
  return `#${linear.map((v) => hex(encode(v / brightest) * fade)).join('')}`;
}
