import type { Anchor, FontRole, MeasureText, TextPrimitive } from './drawing.ts';
import type { Ink } from './figure-model.ts';

const RAISED: Readonly<Record<string, string>> = {
  '⁰': '0', '¹': '1', '²': '2', '³': '3', '⁴': '4', '⁵': '5', '⁶': '6', '⁷': '7', '⁸': '8', '⁹': '9', '⁺': '+', '⁻': '−',
};
/** Size and height of raised characters as a share of the text size. */
const RAISED_SIZE = 0.72;
const RAISED_BY = 0.34;

export type TextRun = { readonly text: string; readonly raised: boolean };

/** Splits 'SiV⁻' into 'SiV' and a raised '−': the bundled typefaces have no superscript signs of their own. */
export function superscriptRuns(text: string): TextRun[] {
  const runs: { text: string; raised: boolean }[] = [];
  for (const character of text) {
    const plain = RAISED[character];
    const raised = plain !== undefined;
    const last = runs.at(-1);
    if (last !== undefined && last.raised === raised) last.text += plain ?? character;
    else runs.push({ text: plain ?? character, raised });
  }
  return runs;
}

const runSize = (run: TextRun, size: number): number => (run.raised ? size * RAISED_SIZE : size);

/** Width of a text whose superscripts are drawn raised. */
export const textWidth = (text: string, font: FontRole, size: number, measure: MeasureText): number =>
  superscriptRuns(text).reduce((sum, run) => sum + measure(run.text, font, runSize(run, size)), 0);

/** One text as the primitives that draw it; x is the anchor's place, y the baseline. */
export function textPrimitives(text: string, x: number, y: number, style: { font: FontRole; size: number; ink: Ink; anchor: Anchor }, measure: MeasureText): TextPrimitive[] {
  const runs = superscriptRuns(text);
  const only = runs[0];
  if (runs.length === 1 && only !== undefined && !only.raised) return [{ kind: 'text', x, y, text, ...style }];
  const width = textWidth(text, style.font, style.size, measure);
  let at = x - (style.anchor === 'end' ? width : style.anchor === 'middle' ? width / 2 : 0);
  return runs.flatMap((run) => {
    const size = runSize(run, style.size);
    // Spaces at a run's ends are moved over, not drawn: some surfaces drop them.
    const text = run.text.trim();
    const indent = measure(run.text.slice(0, run.text.indexOf(text)), style.font, size);
    const start = at + indent;
    at += measure(run.text, style.font, size);
    return text === '' ? [] : [{ kind: 'text', x: start, y: run.raised ? y - style.size * RAISED_BY : y, text, font: style.font, size, ink: style.ink, anchor: 'start' }];
  });
}
