import type { Ink } from '../../app/figure/figure-model.ts';
import { THEMES } from '../../app/figure/inks.ts';
import type { FontRole } from './font-files.ts';

/** The house's colours on white paper. */
export const PAPER_INKS: Readonly<Record<Ink, string>> = THEMES.paper.inks;

/** How a piece of text looks: face, size in points, line pitch in points, colour. */
export type TextStyle = { readonly font: FontRole; readonly size: number; readonly pitch: number; readonly ink: Ink };

const style = (font: FontRole, size: number, pitch: number, ink: Ink): TextStyle => ({ font, size, pitch, ink });

/** The few text styles of every printed page, in one place. */
export const TEXT = {
  title: style('heading', 19.5, 25, 'ink'),
  opinion: style('heading', 15, 20, 'ink'),
  section: style('heading', 12, 17, 'ink'),
  laboratory: style('heading', 13, 17, 'ink'),
  running: style('heading', 10, 14, 'ink'),
  body: style('sans', 9.2, 13.4, 'ink'),
  lead: style('sans', 9.2, 13.4, 'ink2'),
  strong: style('sans600', 9.2, 13.4, 'ink'),
  label: style('sans', 9.2, 13.4, 'ink3'),
  small: style('sans', 8.2, 11.8, 'ink3'),
  smallInk: style('sans', 8.2, 11.8, 'ink2'),
  tableHead: style('sans500', 8.2, 11.8, 'ink3'),
  mono: style('mono', 8.8, 13.4, 'ink'),
  monoSmall: style('mono', 7.8, 11.8, 'ink2'),
  /** 64 digits stand on one line of a raw record's column. */
  digest: style('mono', 7.1, 11.8, 'ink2'),
  labelNumber: style('mono500', 9.4, 12.4, 'ink'),
  labelSmall: style('sans', 7.4, 9.8, 'ink2'),
  warn: style('sans500', 9.2, 13.4, 'warn'),
  warnSmall: style('sans500', 8.2, 11.8, 'warn'),
} as const satisfies Record<string, TextStyle>;

export type PageSize = 'A4' | 'Letter';

/** Sizes in points: A4 from ISO 216, Letter 8.5 × 11 in. */
export const PAGE_POINTS: Readonly<Record<PageSize, { width: number; height: number }>> = {
  A4: { width: 595.28, height: 841.89 },
  Letter: { width: 612, height: 792 },
};

/** Where the text stands on a page, in points. */
export const MARGINS = { left: 48, right: 48, top: 46, bottom: 66 } as const;

/** Baseline of the running foot above the lower edge. */
export const FOOT_FROM_BOTTOM = 34;
