import { z } from 'zod';

/** Colour roles of a drawing; each surface (light, dark, paper) gives them its own value. */
export const INKS = ['ink', 'ink2', 'ink3', 'line', 'line2', 'accent', 'natural', 'cvd', 'hpht', 'warn'] as const;
export const ink = z.enum(INKS);
export type Ink = z.infer<typeof ink>;

/** The axes a figure can be drawn on. */
export const FIGURE_AXES = ['nm', 'nm-vacuum', 'cm-1', 'ev', 'raman-shift'] as const;
export type FigureAxis = (typeof FIGURE_AXES)[number];

/** A spectrum with its named lines, independent of the surface it is drawn on: window, SVG or paper. */
export const figureModel = z.object({
  xUnit: z.enum(FIGURE_AXES),
  xLabel: z.string(),
  yLabel: z.string(),
  /** Ends of the axis in drawing direction: infrared runs from high to low. */
  xRange: z.tuple([z.number(), z.number()]),
  yRange: z.tuple([z.number(), z.number()]),
  curves: z.array(z.object({
    label: z.string(), ink, dash: z.boolean(),
    /** Which broken stroke, of FIGURE_STYLE.patterns; without it the plain dash. */
    pattern: z.number().int().min(0).optional(),
    x: z.array(z.number()), y: z.array(z.number()),
  })),
  lines: z.array(z.object({
    at: z.number(), name: z.string(), position: z.string(), ink,
    /** Expected but not found. */
    dash: z.boolean().optional(),
    /** Where room is short, lines of the lowest importance lose their label first; without it the ink decides. */
    importance: z.number().optional(),
  })),
  /** Strip in the colours of the visible spectrum under a nanometre axis. */
  visibleStrip: z.boolean(),
});
export type FigureModel = z.infer<typeof figureModel>;
export type FigureLine = FigureModel['lines'][number];
