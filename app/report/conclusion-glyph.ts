import type { ConclusionId } from '../domain/conclusion.ts';
import type { Ink } from '../figure/figure-model.ts';

/** One stroke or area of a glyph; coordinates in a square of 16 units, y downwards, in the syntax of SVG 1.1 path data. */
export type GlyphPart = { readonly d: string; readonly fill: boolean; readonly dashed: boolean };
export type ConclusionGlyph = { readonly ink: Ink; readonly parts: readonly GlyphPart[] };

/** Side of the square and width of its strokes, in the same units. */
export const GLYPH_BOX = 16;
export const GLYPH_STROKE = 1.3;
/** Dash and gap of a dashed outline. */
export const GLYPH_DASH: readonly [number, number] = [1.9, 1.5];

const RHOMBUS = 'M8 1 L15 8 L8 15 L1 8 Z';
const stroke = (d: string, dashed = false): GlyphPart => ({ d, fill: false, dashed });
const area = (d: string): GlyphPart => ({ d, fill: true, dashed: false });

/** The sign beside each conclusion; told apart by shape, so that colour is never needed. */
export const CONCLUSION_GLYPHS: Readonly<Record<ConclusionId, ConclusionGlyph>> = {
  natural: { ink: 'natural', parts: [area(RHOMBUS), stroke(RHOMBUS)] },
  // Upright strokes: columns of growth from a flat seed.
  'grown-cvd': { ink: 'cvd', parts: [stroke(RHOMBUS), stroke('M5.2 4 L5.2 12'), stroke('M8 1.6 L8 14.4'), stroke('M10.8 4 L10.8 12')] },
  // A diagonal cross: sectors of growth around a small seed.
  'grown-hpht': { ink: 'hpht', parts: [stroke(RHOMBUS), stroke('M4.5 4.5 L11.5 11.5'), stroke('M11.5 4.5 L4.5 11.5')] },
  'grown-undetermined-method': { ink: 'ink', parts: [stroke(RHOMBUS), stroke('M8 1.6 L8 14.4'), stroke('M11.5 4.5 L4.5 11.5')] },
  'not-diamond': { ink: 'ink', parts: [stroke('M15 8 A7 7 0 1 1 1 8 A7 7 0 1 1 15 8 Z'), stroke('M3.1 12.9 L12.9 3.1')] },
  undetermined: { ink: 'ink2', parts: [stroke(RHOMBUS, true)] },
  'out-of-scope': { ink: 'ink2', parts: [stroke(RHOMBUS), area('M8 1 L15 8 L8 15 Z')] },
};
