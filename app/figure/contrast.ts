import type { Rgb } from './drawing.ts';

const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

/** Relative luminance of an sRGB colour '#rrggbb', 0 to 1: WCAG 2.2, definition "relative luminance". */
export function luminance(colour: Rgb): number {
  const n = Number.parseInt(colour.slice(1), 16);
  return 0.2126 * linear(((n >> 16) & 255) / 255) + 0.7152 * linear(((n >> 8) & 255) / 255) + 0.0722 * linear((n & 255) / 255);
}

/** Contrast ratio of two colours, 1 to 21: WCAG 2.2, definition "contrast ratio". */
export function contrast(a: Rgb, b: Rgb): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}
