import type { Ink } from './figure-model.ts';

/** Typefaces by role: numbers are mono, names are sans500, everything else sans. */
export type FontRole = 'mono' | 'sans' | 'sans500';
export type Anchor = 'start' | 'middle' | 'end';
/** A colour that is data, not a role: the visible strip. */
export type Rgb = `#${string}`;
export type Rect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** A straight stroke; dash is on and off lengths in turn, px. */
export type LinePrimitive = { readonly kind: 'line'; readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number; readonly ink: Ink; readonly width: number; readonly dash?: readonly number[] };
/** An open polyline, points as x0 y0 x1 y1 …, drawn inside clip only. */
export type PathPrimitive = { readonly kind: 'path'; readonly points: readonly number[]; readonly ink: Ink; readonly width: number; readonly dash?: readonly number[]; readonly clip: Rect };
/** A filled rectangle without a stroke. */
export type RectPrimitive = { readonly kind: 'rect'; readonly x: number; readonly y: number; readonly width: number; readonly height: number; readonly fill: Ink | Rgb };
/** One line of text; y is the baseline. */
export type TextPrimitive = { readonly kind: 'text'; readonly x: number; readonly y: number; readonly text: string; readonly font: FontRole; readonly size: number; readonly ink: Ink; readonly anchor: Anchor };
export type Primitive = LinePrimitive | PathPrimitive | RectPrimitive | TextPrimitive;

/** What a surface has to draw, in this order. Units are px (points on paper); y runs down. */
export type Drawing = { readonly width: number; readonly height: number; readonly primitives: readonly Primitive[] };

/** Width of a text in the drawing's units. */
export type MeasureText = (text: string, font: FontRole, size: number) => number;

export const isRgb = (fill: Ink | Rgb): fill is Rgb => fill.startsWith('#');
