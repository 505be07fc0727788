import { useEffect, useRef } from 'react';
import type { BarTrace, DrawnAxis, PointTrace } from 'plotly.js-cartesian-dist-min';
import { useTheme } from '../look/theme.ts';
import { usePlotly } from '../look/use-plotly.ts';
import { useSize } from '../look/use-size.ts';

/** Tokens of look/tokens.css: hues that colour-blind people keep apart. */
export type PlotInk = 'ink' | 'accent' | 'natural' | 'cvd' | 'hpht' | 'ink3' | 'warn';

/** Series are told apart by hatching, dashes and marks as well as by colour. */
export type PlotSeries = {
  readonly name: string; readonly ink: PlotInk; readonly values: readonly (number | null)[];
} & (
  | { readonly kind: 'bars'; readonly hatch?: '' | '/' | '.' | '-' }
  | { readonly kind: 'points'; readonly joined: boolean; readonly dash?: 'solid' | 'dash' | 'dot'; readonly symbol?: string | readonly string[]; /** Ends of the error bars, in the unit of the values. */ readonly limits?: readonly ({ readonly low: number; readonly high: number } | null)[] }
);

/** A line that holds a value at each step, and moves by a step where it changes; null where it has none. */
export type PlotLine = { readonly values: readonly (number | null)[]; readonly ink: PlotInk; readonly dash: 'solid' | 'dash' | 'dot'; readonly name: string; /** Steps before which it is cut, though it goes on. */ readonly cuts?: readonly number[] };

/** Something that happened between two steps. */
export type PlotBreak = { readonly before: number; readonly words: string };

/** Kept, so that a drawing without any is not made anew each time. */
const NO_LINES: readonly PlotLine[] = [];
const NO_BREAKS: readonly PlotBreak[] = [];

const HEIGHT = 216;
const FEW_TICKS = 14;
const FEW_COUNTED = 4;
/** Advance of a digit of the axis' typeface at 11 px, the air that keeps two labels apart, and what the ordinate's own labels take of the width; px. */
const DIGIT_PX = 6.7;
const LABEL_GAP_PX = 16;
const ORDINATE_PX = 64;

type Look = { readonly colour: (ink: string) => string; readonly family: string };

function traceOf(series: PlotSeries, labels: readonly string[], { colour }: Look): BarTrace | PointTrace {
  const own = colour(series.ink);
  const base = { x: labels, y: series.values, name: series.name, hoverinfo: 'skip' as const };
  if (series.kind === 'bars') {
    const shape = series.hatch ?? '';
    // A bar of nothing would still draw its border.
    return { ...base, y: series.values.map((value) => (value === 0 ? null : value)), type: 'bar', marker: { color: own, line: { color: own, width: 1 }, pattern: { shape, fgcolor: own, bgcolor: colour('sheet'), size: 5 } } };
  }
  const { limits } = series;
  const reach = (side: 'low' | 'high'): number[] => series.values.map((value, i) => { const limit = limits?.[i]; return value === null || !limit ? 0 : Math.abs(limit[side] - value); });
  return {
    ...base, type: 'scatter', mode: series.joined ? 'lines+markers' : 'markers', connectgaps: false, line: { color: own, width: 1.5, dash: series.dash ?? 'solid' },
    marker: { color: own, size: 6, symbol: series.symbol ?? 'circle' },
    ...(limits && { error_y: { type: 'data' as const, symmetric: false as const, array: reach('high'), arrayminus: reach('low'), color: own, thickness: 1, width: 3 } }),
  };
}

type Piece = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

/** A line as level pieces, half a step to either side of their steps, and upright ones where it changes. */
function piecesOf({ values, cuts = [] }: PlotLine): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  values.forEach((value, i) => {
    const next = values[i + 1] ?? null;
    if (value !== null && (next !== value || cuts.includes(i + 1))) pieces.push({ x0: from - 0.5, x1: i + 0.5, y0: value, y1: value });
    if (value !== null && next !== null && next !== value && !cuts.includes(i + 1)) pieces.push({ x0: i + 0.5, x1: i + 0.5, y0: value, y1: next });
    if (next !== value || cuts.includes(i + 1)) from = i + 1;
  });
  return pieces;
}

function axis({ colour, family }: Look, part: Partial<DrawnAxis> & Pick<DrawnAxis, 'type'>): DrawnAxis {
  return {
    fixedrange: true, tickfont: { family, size: 11, color: colour('ink3') }, gridcolor: colour('line2'), linecolor: colour('line'), zeroline: false,
    showline: true, showgrid: false, automargin: true, ticks: 'outside', tickcolor: colour('line'), ...part,
  };
}

/** Labels of the axis of time: every one while few, else every so many. */
function thinned(labels: readonly string[], width: number): Partial<DrawnAxis> {
  const longest = Math.max(1, ...labels.map((label) => label.length));
  const room = Math.max(1, Math.min(FEW_TICKS, Math.floor((width - ORDINATE_PX) / (longest * DIGIT_PX + LABEL_GAP_PX))));
  const every = Math.ceil(labels.length / room);
  return every <= 1 ? {} : { tickmode: 'array', tickvals: labels.filter((_, i) => i % every === 0) };
}

/** Nothing comes by halves that is counted: a tick for each number while they are few. */
function wholeTicks(series: readonly PlotSeries[]): Partial<DrawnAxis> {
  const values = series.flatMap((one) => (one.kind === 'points' && one.limits ? [0.5] : one.values.filter((value) => value !== null)));
  const most = Math.max(1, ...values);
  return most <= FEW_COUNTED && values.length > 0 && values.every(Number.isInteger) ? { tickmode: 'array', tickvals: Array.from({ length: most + 1 }, (_, n) => n) } : {};
}

/** A joined series as one series for each stretch between two breaks: no line leads across a break. */
function stretchesOf(series: PlotSeries, breaks: readonly PlotBreak[]): PlotSeries[] {
  if (series.kind !== 'points' || !series.joined || breaks.length === 0) return [series];
  const ends = [...breaks.map(({ before }) => before), series.values.length];
  return ends.map((end, i) => ({ ...series, values: series.values.map((value, at) => (at >= (ends[i - 1] ?? 0) && at < end ? value : null)) }));
}

/** Numbers of steps that follow one another, drawn; the table beside it says the same to whoever cannot see it. */
export function StepPlot({ name, labels, series, lines = NO_LINES, breaks = NO_BREAKS, unit, fromZero = true }: {
  readonly name: string; readonly labels: readonly string[]; readonly series: readonly PlotSeries[]; readonly lines?: readonly PlotLine[]; readonly breaks?: readonly PlotBreak[]; readonly unit: string; readonly fromZero?: boolean;
}) {
  const place = useRef<HTMLDivElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const plotly = usePlotly();
  const theme = useTheme();
  const width = useSize(frame)?.width ?? 0;

  useEffect(() => {
    const element = place.current;
    if (!plotly || !element || width === 0) return;
    const tokens = getComputedStyle(document.documentElement);
    const look: Look = { colour: (ink) => tokens.getPropertyValue(`--${ink}`).trim(), family: tokens.getPropertyValue('--mono').trim() };
    void plotly.react(element, series.flatMap((one) => stretchesOf(one, breaks)).map((one) => traceOf(one, labels, look)), {
      width, height: HEIGHT, showlegend: false, paper_bgcolor: 'rgba(0,0,0,0)', plot_bgcolor: 'rgba(0,0,0,0)', separators: '.', barmode: 'group', bargap: 0.3, bargroupgap: 0.08,
      margin: { l: 52, r: 8, t: 10, b: 30, pad: 0, autoexpand: true },
      xaxis: axis(look, { type: 'category', tickangle: 0, ...thinned(labels, width) }),
      yaxis: axis(look, { type: 'linear', showgrid: true, nticks: 5, rangemode: fromZero ? 'tozero' : 'normal', ...(lines.length === 0 && fromZero ? wholeTicks(series) : {}), title: { text: unit, font: { family: look.family, size: 11, color: look.colour('ink3') }, standoff: 8 } }),
      shapes: [
        ...lines.flatMap((line) => piecesOf(line).map((piece) => ({ type: 'line' as const, xref: 'x' as const, yref: 'y' as const, ...piece, line: { color: look.colour(line.ink), width: 1, dash: line.dash } }))),
        ...breaks.map(({ before }) => ({ type: 'line' as const, xref: 'x' as const, yref: 'paper' as const, x0: before - 0.5, x1: before - 0.5, y0: 0, y1: 1, line: { color: look.colour('ink'), width: 1, dash: 'solid' } })),
      ],
      annotations: breaks.map(({ before, words }) => ({ x: before - 0.5, xref: 'x', y: 1, yref: 'paper', text: ` ${words} `, showarrow: false, xanchor: before * 2 > labels.length ? 'right' : 'left', yanchor: 'top', font: { family: look.family, size: 11, color: look.colour('ink') } })),
    }, { staticPlot: true, displayModeBar: false, responsive: false });
  }, [plotly, labels, series, lines, breaks, unit, fromZero, width, theme]);

  useEffect(() => {
    const element = place.current;
    if (!plotly || !element) return undefined;
    return () => { plotly.purge(element); };
  }, [plotly]);

  return (
    <figure className="step-plot" ref={frame} aria-label={name}>
      <div ref={place} className="step-plot-surface" aria-hidden="true" />
      {series.length + lines.length > 1 ? (
        <figcaption className="step-plot-key">
          {series.map((one) => <span key={one.name} className={`key-${one.kind} ink-${one.ink} ${one.kind === 'bars' ? `hatch${'/.-'.indexOf(one.hatch || ' ')}` : one.joined ? `dash-${one.dash ?? 'solid'}` : 'key-marks'}`}>{one.name}</span>)}
          {lines.map((one) => <span key={one.name} className={`key-line ink-${one.ink} dash-${one.dash}`}>{one.name}</span>)}
        </figcaption>
      ) : null}
    </figure>
  );
}
