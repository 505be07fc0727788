import { useEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent, type RefObject } from 'react';
import { fromPx, pxToX, xToPx, yToPx } from '../../app/figure/axis-scale.ts';
import { cursorReadout, readoutTexts } from '../../app/figure/cursor-readout.ts';
import type { Rect } from '../../app/figure/drawing.ts';
import type { FigureModel } from '../../app/figure/figure-model.ts';
import { layoutFigure } from '../../app/figure/layout-figure.ts';
import { CurveSurface } from './curve-surface.tsx';
import { LegendPointers } from './legend-pointers.tsx';
import { FigureLayer } from './figure-layer.tsx';
import { measureText, useFigureFonts } from './measure-text.ts';
import { nearestPoint } from './nearest-point.ts';
import { useSize } from '../look/use-size.ts';
import { isWhole, panRange, rangeBetween, zoomRange, type Range } from './view-range.ts';

/** What is shown of a figure: part of the abscissa and, where a box was drawn, of the ordinate. null shows all. */
export type Shown = { readonly x: Range | null; readonly y: Range | null };
export const ALL_SHOWN: Shown = { x: null, y: null };

type Size = { readonly width: number; readonly height: number };
type Pull = { readonly x: number; readonly y: number; readonly toX: number; readonly toY: number; readonly moves: boolean };

/** Factor of one notch of the wheel or one press of + and −. */
const STEP = 0.8;
/** A pull this flat selects along the axis only, px. */
const FLAT_PX = 24;
const CLICK_PX = 4;

const inPlot = (plot: Rect, x: number, y: number): boolean => x >= plot.x && x <= plot.x + plot.width && y >= plot.y && y <= plot.y + plot.height;

type Props = {
  /** The figure for what is shown; made anew for each part and width. */
  readonly figure: (shown: Shown, columns: number) => FigureModel;
  /** Ends of everything there is to see, in the axis' unit. */
  readonly whole: Range;
  readonly shown: Shown;
  readonly onShown: (shown: Shown) => void;
  readonly laserNm: number | null;
  /** The curve whose intensity the cursor reads, in the axis' unit. */
  readonly read: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> };
  readonly label: string;
  /** Label of the curve that is pointed at, here or elsewhere. */
  readonly pointed: string | null;
  readonly onPointed: (label: string | null) => void;
  /** Told with every layout, for the export of the same picture. */
  readonly onLaidOut: (model: FigureModel, size: Size) => void;
};

/** One figure that can be looked into: wheel and pull zoom, Shift-pull moves, double click shows everything, the cursor reads. */
export function SpectrumPlot(p: Props) {
  const place = useRef<HTMLDivElement>(null);
  const size = useSize(place);
  const fonts = useFigureFonts();
  return <div ref={place} className="spectrum-plot">{size && size.width > 80 && fonts ? <Drawn {...p} size={size} place={place} /> : null}</div>;
}

/** The curves are drawn by another hand; of each only its place in the drawing's order is kept. */
const withoutPoints = (model: FigureModel): FigureModel => ({ ...model, curves: model.curves.map((curve) => ({ ...curve, x: [...model.xRange], y: [...model.yRange] })) });

function Drawn({ size, place, ...p }: Props & { readonly size: Size; readonly place: RefObject<HTMLDivElement | null> }) {
  const { figure, shown, whole, onShown, onLaidOut } = p;
  const model = useMemo(() => figure(shown, size.width), [figure, shown, size.width]);
  const layout = useMemo(() => layoutFigure(withoutPoints(model), { ...size, measureText }), [model, size]);
  const { plot } = layout;
  const layers = useMemo(() => {
    const all = layout.drawing.primitives;
    const first = all.findIndex((one) => one.kind === 'path');
    const last = all.findLastIndex((one) => one.kind === 'path');
    return first < 0 ? { under: all, over: [] } : { under: all.slice(0, first), over: all.slice(last + 1) };
  }, [layout]);
  const [cursor, setCursor] = useState<{ x: number; y: number } | null>(null);
  const [pull, setPull] = useState<Pull | null>(null);
  const frame = useRef(0);
  useEffect(() => { onLaidOut(model, size); }, [onLaidOut, model, size]);

  const range: Range = shown.x ?? whole;
  const setX = (x: Range) => { onShown({ x: isWhole(x, whole) ? null : x, y: shown.y }); };
  const look = { range, whole, plot, model, setX };
  const latest = useRef(look);
  useEffect(() => { latest.current = look; });

  // React's own wheel listener can't keep the page from scrolling.
  useEffect(() => {
    const element = place.current;
    if (!element) return undefined;
    const onWheel = (event: WheelEvent) => {
      const box = element.getBoundingClientRect();
      const { plot: within } = latest.current;
      const x = event.clientX - box.left;
      if (!inPlot(within, x, event.clientY - box.top)) return;
      event.preventDefault();
      cancelAnimationFrame(frame.current);
      const factor = event.deltaY < 0 ? STEP : 1 / STEP;
      frame.current = requestAnimationFrame(() => {
        const now = latest.current;
        now.setX(zoomRange(now.range, pxToX(x, now.model.xRange, now.plot), factor, now.whole));
      });
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => { element.removeEventListener('wheel', onWheel); cancelAnimationFrame(frame.current); };
  }, [place]);

  const at = (event: PointerEvent): { x: number; y: number } => {
    const box = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const onDown = (event: PointerEvent<HTMLDivElement>) => {
    const { x, y } = at(event);
    if (event.button > 1 || !inPlot(plot, x, y)) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setPull({ x, y, toX: x, toY: y, moves: event.shiftKey || event.button === 1 });
  };
  const onMove = (event: PointerEvent<HTMLDivElement>) => {
    const { x, y } = at(event);
    setCursor(inPlot(plot, x, y) ? { x, y } : null);
    if (!pull) return;
    if (pull.moves) {
      const by = pxToX(pull.toX, model.xRange, plot) - pxToX(x, model.xRange, plot);
      setX(panRange(range, by, whole));
    }
    setPull({ ...pull, toX: x, toY: y });
  };
  const onUp = () => {
    if (!pull) return;
    setPull(null);
    if (pull.moves || Math.abs(pull.toX - pull.x) < CLICK_PX) return;
    const x = rangeBetween(pxToX(pull.x, model.xRange, plot), pxToX(pull.toX, model.xRange, plot), whole);
    if (!x) return;
    const toY = (px: number): number => fromPx(px, model.yRange, plot.y + plot.height, plot.y);
    const y = Math.abs(pull.toY - pull.y) > FLAT_PX ? rangeBetween(toY(pull.y), toY(pull.toY), [model.yRange[0], model.yRange[1]]) : null;
    onShown({ x, y: y ?? shown.y });
  };
  const onKey = (event: KeyboardEvent) => {
    const middle = (range[0] + range[1]) / 2;
    const quarter = (range[1] - range[0]) / 4 * (model.xRange[0] > model.xRange[1] ? -1 : 1);
    const act: Readonly<Record<string, () => void>> = {
      '+': () => { setX(zoomRange(range, middle, STEP, whole)); }, '=': () => { setX(zoomRange(range, middle, STEP, whole)); },
      '-': () => { setX(zoomRange(range, middle, 1 / STEP, whole)); },
      ArrowLeft: () => { setX(panRange(range, -quarter, whole)); }, ArrowRight: () => { setX(panRange(range, quarter, whole)); },
      '0': () => { onShown(ALL_SHOWN); }, Home: () => { onShown(ALL_SHOWN); },
    };
    const run = act[event.key];
    if (!run || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    run();
  };

  const readX = cursor ? pxToX(cursor.x, model.xRange, plot) : null;
  const index = readX === null ? -1 : nearestPoint(p.read.x, readX);
  const value = index < 0 ? Number.NaN : p.read.y[index]!;
  return (
    <>
      <div className="figure" tabIndex={0} role="img" aria-label={`${p.label}. Plus and minus zoom, arrows move, 0 shows everything.`}
        onPointerDown={onDown} onPointerMove={onMove} onPointerUp={onUp} onPointerCancel={() => { setPull(null); }} onPointerLeave={() => { setCursor(null); }}
        onDoubleClick={() => { onShown(ALL_SHOWN); }} onKeyDown={onKey}>
        <FigureLayer primitives={layers.under} {...size} />
        <CurveSurface model={model} plot={plot} pointed={p.pointed} {...size} />
        <FigureLayer primitives={layers.over} {...size} />
        <svg className="figure-layer" {...size} aria-hidden="true">
          {pull && !pull.moves ? <PullBox pull={pull} plot={plot} /> : null}
          {cursor && !pull ? <line x1={cursor.x} x2={cursor.x} y1={plot.y} y2={plot.y + plot.height} className="figure-cursor" /> : null}
          {cursor && !pull && Number.isFinite(value) ? <circle cx={xToPx(p.read.x[index]!, model.xRange, plot)} cy={yToPx(value, model.yRange, plot)} r={2.5} className="figure-point" /> : null}
        </svg>
      </div>
      <LegendPointers places={layout.legend} model={model} onPointed={p.onPointed} />
      <Readout at={readX} axis={model} value={value} laserNm={p.laserNm} zoomed={shown.x !== null || shown.y !== null} onWhole={() => { onShown(ALL_SHOWN); }} />
    </>
  );
}

function PullBox({ pull, plot }: { readonly pull: Pull; readonly plot: Rect }) {
  const flat = Math.abs(pull.toY - pull.y) <= FLAT_PX;
  const clampX = (v: number): number => Math.min(Math.max(v, plot.x), plot.x + plot.width);
  const clampY = (v: number): number => Math.min(Math.max(v, plot.y), plot.y + plot.height);
  const [left, right] = [clampX(Math.min(pull.x, pull.toX)), clampX(Math.max(pull.x, pull.toX))];
  const [top, bottom] = flat ? [plot.y, plot.y + plot.height] : [clampY(Math.min(pull.y, pull.toY)), clampY(Math.max(pull.y, pull.toY))];
  return <rect x={left} y={top} width={right - left} height={bottom - top} className="figure-pull" />;
}

/** Digits that a reading deserves, whatever its size. */
const intensity = (value: number): string => (Math.abs(value) >= 1000 ? Math.round(value).toLocaleString('en').replaceAll(',', '\u00a0') : value.toPrecision(4)).replace('-', '−');

/** The place under the cursor in every unit, or how the figure is handled. */
function Readout(p: { readonly at: number | null; readonly axis: FigureModel; readonly value: number; readonly laserNm: number | null; readonly zoomed: boolean; readonly onWhole: () => void }) {
  const texts = p.at === null ? null : readoutTexts(cursorReadout(p.at, p.axis.xUnit, p.laserNm ?? undefined));
  return (
    <div className="readout">
      {texts ? (
        <>
          <span className="mono">{texts[0]}</span><span className="mono">{texts[1]}</span><span className="mono">{texts[2]}</span>
          {p.laserNm === null && p.axis.xUnit !== 'raman-shift' ? null : <span className="mono">shift {texts[3]}</span>}
          {Number.isFinite(p.value) ? <span><span className="mono">{intensity(p.value)}</span> <span className="quiet">{p.axis.yLabel}</span></span> : null}
        </>
      ) : <span className="quiet">Wheel or pull to look closer, Shift-pull to move, double click for all of it</span>}
      {p.zoomed ? <button type="button" className="word-button" onClick={p.onWhole}>Show all</button> : null}
    </div>
  );
}
