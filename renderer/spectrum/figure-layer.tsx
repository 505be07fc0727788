import { memo } from 'react';
import { isRgb, type Primitive } from '../../app/figure/drawing.ts';
import type { Ink } from '../../app/figure/figure-model.ts';
import { FIGURE_FONTS } from './measure-text.ts';

const ofInk = (ink: Ink): string => `var(--${ink})`;
const dashes = (dash: readonly number[] | undefined): string | undefined => dash?.join(' ');

/** Half pixels make a hairline one pixel wide instead of two grey ones. */
const crisp = (v: number): number => Math.round(v - 0.5) + 0.5;

function draw(p: Primitive, key: number) {
  switch (p.kind) {
    case 'line': {
      const upright = p.x1 === p.x2;
      const level = p.y1 === p.y2;
      return <line key={key} x1={upright ? crisp(p.x1) : p.x1} x2={upright ? crisp(p.x2) : p.x2} y1={level ? crisp(p.y1) : p.y1} y2={level ? crisp(p.y2) : p.y2} stroke={ofInk(p.ink)} strokeWidth={p.width} strokeDasharray={dashes(p.dash)} />;
    }
    case 'rect': return <rect key={key} x={p.x} y={p.y} width={p.width} height={p.height} fill={isRgb(p.fill) ? p.fill : ofInk(p.fill)} />;
    case 'text': return (
      <text key={key} x={p.x} y={p.y} fontSize={p.size} fill={ofInk(p.ink)} textAnchor={p.anchor} style={{ fontFamily: FIGURE_FONTS[p.font].family, fontWeight: FIGURE_FONTS[p.font].weight }}>{p.text}</text>
    );
    // Curves are the plot library's part.
    case 'path': return null;
  }
}

/** One layer of a figure over or under the curves: what the shared layout says, in the window's colours. */
export const FigureLayer = memo(function FigureLayer(p: { readonly primitives: readonly Primitive[]; readonly width: number; readonly height: number }) {
  return <svg className="figure-layer" width={p.width} height={p.height} aria-hidden="true">{p.primitives.map(draw)}</svg>;
});
