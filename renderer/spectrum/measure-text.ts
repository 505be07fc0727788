import { useEffect, useState } from 'react';
import type { FontRole, MeasureText } from '../../app/figure/drawing.ts';

/** The faces of a drawing, as the window bundles them. */
export const FIGURE_FONTS: Readonly<Record<FontRole, { readonly family: string; readonly weight: number }>> = {
  mono: { family: "'IBM Plex Mono', monospace", weight: 400 },
  sans: { family: "'IBM Plex Sans', sans-serif", weight: 400 },
  sans500: { family: "'IBM Plex Sans', sans-serif", weight: 500 },
};

/** CSS font shorthand of a role at a size in px. */
export const cssFont = (font: FontRole, size: number): string => `${FIGURE_FONTS[font].weight} ${size}px ${FIGURE_FONTS[font].family}`;

let context: CanvasRenderingContext2D | null = null;
const known = new Map<string, number>();
const MOST_KNOWN = 5000;

/** Width of a text in the window's own faces, px. */
export const measureText: MeasureText = (text, font, size) => {
  const key = `${font} ${size} ${text}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  context ??= document.createElement('canvas').getContext('2d');
  if (context === null) return text.length * size * 0.6;
  context.font = cssFont(font, size);
  const { width } = context.measureText(text);
  if (known.size > MOST_KNOWN) known.clear();
  known.set(key, width);
  return width;
};

/** Makes sure that the faces of a drawing are there before it is measured or drawn on a canvas. */
export async function loadFigureFonts(): Promise<void> {
  await Promise.all((Object.keys(FIGURE_FONTS) as FontRole[]).map((font) => document.fonts.load(cssFont(font, 12))));
  known.clear();
}

/** True once the faces are there; what was measured before then is measured anew. */
export function useFigureFonts(): boolean {
  const [ready, setReady] = useState(false);
  useEffect(() => {
    let shown = true;
    void loadFigureFonts().finally(() => { if (shown) setReady(true); });
    return () => { shown = false; };
  }, []);
  return ready;
}
