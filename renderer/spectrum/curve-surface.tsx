import { useEffect, useRef } from 'react';
import type { CurveTrace } from 'plotly.js-cartesian-dist-min';
import type { Rect } from '../../app/figure/drawing.ts';
import type { FigureModel, Ink } from '../../app/figure/figure-model.ts';
import { dashOf, FIGURE_STYLE } from '../../app/figure/figure-style.ts';
import { useTheme } from '../look/theme.ts';
import { usePlotly } from '../look/use-plotly.ts';

const plotlyDash = (dash: readonly number[] | undefined): { dash?: string } => (dash ? { dash: dash.map((v) => `${v}px`).join(',') } : {});
/** Name under which the browser's own timeline keeps how long drawing took. */
export const REDRAW_MEASURE = 'spectrum redraw';

/** A gap divides a curve into pieces, of which only the first carries the name. */
function pointedPieces(model: FigureModel, pointed: string | null): ReadonlySet<number> {
  const first = pointed === null || pointed === '' ? -1 : model.curves.findIndex((curve) => curve.label === pointed);
  if (first < 0) return new Set();
  const next = model.curves.findIndex((curve, i) => i > first && curve.label !== '');
  return new Set(Array.from({ length: (next < 0 ? model.curves.length : next) - first }, (_, i) => first + i));
}

function tracesOf(model: FigureModel, pointed: string | null, colourOf: (ink: Ink) => string): CurveTrace[] {
  const pieces = pointedPieces(model, pointed);
  // The first curve is the one in question: it lies on top.
  return model.curves.map((curve, i): CurveTrace => ({
    type: 'scatter', mode: 'lines', x: curve.x, y: curve.y, hoverinfo: 'skip', connectgaps: false,
    line: { color: colourOf(curve.ink), width: pieces.has(i) ? FIGURE_STYLE.pointedWidth : FIGURE_STYLE.curveWidth, ...plotlyDash(dashOf(curve, FIGURE_STYLE)) },
  })).toReversed();
}

/** The curves of a figure in the frame that the layout gives; axes and names are drawn around it by the figure's layers. */
export function CurveSurface({ model, plot, width, height, pointed }: {
  readonly model: FigureModel; /** Label of the curve that is drawn thicker. */ readonly pointed: string | null; readonly plot: Rect; readonly width: number; readonly height: number;
}) {
  const place = useRef<HTMLDivElement>(null);
  const plotly = usePlotly();
  const theme = useTheme();

  useEffect(() => {
    const element = place.current;
    if (!plotly || !element) return;
    const started = performance.now();
    const tokens = getComputedStyle(document.documentElement);
    const axis = { visible: false, fixedrange: true, autorange: false } as const;
    void plotly.react(
      element, tracesOf(model, pointed, (ink) => tokens.getPropertyValue(`--${ink}`).trim()),
      {
        width, height, showlegend: false, paper_bgcolor: 'rgba(0,0,0,0)', plot_bgcolor: 'rgba(0,0,0,0)',
        margin: { l: plot.x, r: width - plot.x - plot.width, t: plot.y, b: height - plot.y - plot.height, pad: 0, autoexpand: false },
        xaxis: { range: model.xRange, ...axis }, yaxis: { range: model.yRange, ...axis },
      },
      { staticPlot: true, displayModeBar: false, responsive: false },
    ).then(() => { performance.measure(REDRAW_MEASURE, { start: started, end: performance.now() }); });
  }, [plotly, model, plot, width, height, theme, pointed]);

  useEffect(() => {
    const element = place.current;
    if (!plotly || !element) return undefined;
    return () => { plotly.purge(element); };
  }, [plotly]);

  return <div ref={place} className="curve-surface" aria-hidden="true" />;
}
