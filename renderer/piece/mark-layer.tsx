import { memo, useMemo } from 'react';
import type { Outline } from '../../app/images/photograph.ts';
import { labelMarks, type MarkLabel } from '../../app/piece/label-marks.ts';
import type { Mark } from '../../app/piece/mark.ts';
import { apply, inSight, type ShownPicture, type Size } from '../../app/piece/picture-view.ts';
import { Glyph } from '../look/glyph.tsx';
import type { MarkSign } from './stone-glyph.ts';

/** Measures of a mark's box, px. */
const BOX = { height: 19, side: 6, glyph: 12, gap: 4, digit: 7.3 } as const;

const boxWidth = (mark: Mark, sign: MarkSign): number => 2 * BOX.side + String(mark.number).length * BOX.digit + (sign.glyph ? BOX.glyph + BOX.gap : 0);

export type DrawnMark = { readonly mark: Mark; readonly sign: MarkSign; readonly x: number; readonly y: number; readonly radius: number };

/** Where marks lie in the zoomed content, px, before the camera's shift. Those in a part that the crop leaves out are not drawn. */
export function drawMarks(marks: readonly Mark[], signs: ReadonlyMap<string, MarkSign>, picture: Size, shown: ShownPicture, zoom: number): DrawnMark[] {
  return marks.flatMap((mark) => {
    const at = apply(shown.matrix, { x: mark.x * picture.width, y: mark.y * picture.height });
    if (!inSight(at, shown)) return [];
    return [{ mark, sign: signs.get(mark.id) ?? { glyph: null, words: '' }, x: at.x * zoom, y: at.y * zoom, radius: mark.radius * picture.width * zoom }];
  });
}

/** Four corners around a stone: they show its place and size and leave the stone itself free. */
function corners(x: number, y: number, radius: number): string {
  const r = Math.max(radius, 5);
  const arm = Math.min(r * 0.5, 12);
  const corner = (sx: number, sy: number): string => `M${x + sx * r} ${y + sy * (r - arm)}V${y + sy * r}H${x + sx * (r - arm)}`;
  return corner(-1, -1) + corner(1, -1) + corner(1, 1) + corner(-1, 1);
}

export function Corners({ x, y, radius, dashed = false }: { readonly x: number; readonly y: number; readonly radius: number; readonly dashed?: boolean }) {
  const d = corners(x, y, radius);
  return <g className={`corners ${dashed ? 'corners-dashed' : ''}`}><path d={d} className="corners-under" /><path d={d} className="corners-over" /></g>;
}

const OneMark = memo(function OneMark({ drawn, label, selected, onSelect }: {
  readonly drawn: DrawnMark; readonly label: MarkLabel; readonly selected: boolean; readonly onSelect: (id: string) => void;
}) {
  const { mark, sign, x, y, radius } = drawn;
  const { leader } = label;
  return (
    <g className={`mark ${selected ? 'mark-selected' : ''}`} data-mark={mark.id} tabIndex={0} role="button" aria-pressed={selected} aria-label={sign.words} onFocus={() => { onSelect(mark.id); }}>
      <circle cx={x} cy={y} r={Math.max(radius, 8)} className="mark-hit" />
      {selected ? <Corners x={x} y={y} radius={radius} /> : null}
      <line x1={leader.x1} y1={leader.y1} x2={leader.x2} y2={leader.y2} className="leader-under" />
      <line x1={leader.x1} y1={leader.y1} x2={leader.x2} y2={leader.y2} className="leader-over" />
      <rect x={label.x} y={label.y} width={label.width} height={label.height} rx={2} className="mark-box" />
      {sign.glyph ? <g transform={`translate(${label.x + BOX.side} ${label.y + (BOX.height - BOX.glyph) / 2})`}><Glyph of={sign.glyph} size={BOX.glyph} /></g> : null}
      <text x={label.x + label.width - BOX.side} y={label.y + BOX.height / 2 + 4} textAnchor="end" className="mark-number">{mark.number}</text>
      <title>{sign.words}</title>
    </g>
  );
});

/**
 * All marks with their numbers, drawn in the zoomed content and shifted as a whole: moving the picture lays nothing out anew.
 * Tab goes by number.
 */
export const MarkLayer = memo(function MarkLayer({ drawn, selected, onSelect }: { readonly drawn: readonly DrawnMark[]; readonly selected: string | null; readonly onSelect: (id: string) => void }) {
  const ordered = useMemo(() => drawn.toSorted((a, b) => a.mark.number - b.mark.number), [drawn]);
  const labels = useMemo(() => labelMarks(ordered.map(({ mark, sign, x, y, radius }) => ({ id: mark.id, x, y, radius, width: boxWidth(mark, sign), height: BOX.height }))), [ordered]);
  return <>{ordered.map((one, i) => <OneMark key={one.mark.id} drawn={one} label={labels[i]!} selected={one.mark.id === selected} onSelect={onSelect} />)}</>;
});

/** Outlines that were found and belong to no mark yet: broken corners with a question mark, to be taken or dropped one by one. */
export function SuggestionLayer({ outlines, chosen, onChoose }: {
  readonly outlines: readonly (Outline & { readonly id: string; readonly cx: number; readonly cy: number; readonly r: number })[]; readonly chosen: string | null; readonly onChoose: (id: string) => void;
}) {
  return (
    <>
      {outlines.map((one, i) => (
        <g key={one.id} className={`suggestion ${one.id === chosen ? 'suggestion-chosen' : ''}`} data-suggestion={one.id} tabIndex={0} role="button" aria-pressed={one.id === chosen} aria-label={`Found outline ${i + 1}`} onFocus={() => { onChoose(one.id); }}>
          <circle cx={one.cx} cy={one.cy} r={Math.max(one.r, 8)} className="mark-hit" />
          <Corners x={one.cx} y={one.cy} radius={one.r} dashed />
          <text x={one.cx} y={one.cy + 4} textAnchor="middle" className="suggestion-sign">?</text>
        </g>
      ))}
    </>
  );
}
