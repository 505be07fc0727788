import type { ConclusionId } from '../domain/conclusion.ts';
import type { Ink } from '../figure/figure-model.ts';

/** One stroke of a glyph on a 16 × 16 field, stroke width 1.3: SVG path data, understood by the window and by the printer. */
export type GlyphStroke = { readonly d: string; readonly fill?: boolean; readonly dash?: boolean };

const RHOMBUS = 'M8 1 15 8 8 15 1 8Z';

/** Told by shape first; the colour only repeats it. */
const STROKES: Readonly<Record<ConclusionId, readonly GlyphStroke[]>> = {
  natural: [{ d: RHOMBUS, fill: true }, { d: RHOMBUS }],
  'grown-cvd': [{ d: RHOMBUS }, { d: 'M5.2 5v6M8 2.5v11M10.8 5v6' }],
  'grown-hpht': [{ d: RHOMBUS }, { d: 'M4.5 4.5l7 7M11.5 4.5l-7 7' }],
  'grown-undetermined-method': [{ d: RHOMBUS }, { d: 'M6 3.4v9.2M8 11.8l4.4-5.6' }],
  'not-diamond': [{ d: 'M8 1.8a6.2 6.2 0 1 0 0 12.4a6.2 6.2 0 1 0 0-12.4Z' }, { d: 'M3.7 12.3l8.6-8.6' }],
  undetermined: [{ d: RHOMBUS, dash: true }],
  'out-of-scope': [{ d: RHOMBUS }, { d: 'M8 1 15 8 8 15Z', fill: true }],
};

export const conclusionStrokes = (id: ConclusionId): readonly GlyphStroke[] => STROKES[id];

export const CONCLUSION_INK: Readonly<Record<ConclusionId, Ink>> = {
  natural: 'natural', 'grown-cvd': 'cvd', 'grown-hpht': 'hpht', 'grown-undetermined-method': 'ink2',
  'not-diamond': 'ink', undetermined: 'ink2', 'out-of-scope': 'ink2',
};
