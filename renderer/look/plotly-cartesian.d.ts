/** The few calls of the plot library that the window makes; it comes without types of its own. */
declare module 'plotly.js-cartesian-dist-min' {
  export type CurveTrace = {
    readonly type: 'scatter';
    readonly mode: 'lines';
    readonly x: readonly number[];
    readonly y: readonly number[];
    readonly line: { readonly color: string; readonly width: number; readonly dash?: string; readonly simplify?: boolean };
    readonly hoverinfo: 'skip';
    readonly connectgaps: false;
  };
  type Named = { readonly x: readonly (string | number)[]; readonly y: readonly (number | null)[]; readonly name: string; readonly hoverinfo: 'skip' };
  export type BarTrace = Named & {
    readonly type: 'bar';
    readonly marker: { readonly color: string; readonly line: { readonly color: string; readonly width: number }; readonly pattern: { readonly shape: string; readonly fgcolor: string; readonly bgcolor: string; readonly size: number } };
  };
  export type PointTrace = Named & {
    readonly type: 'scatter';
    readonly mode: 'lines+markers' | 'markers' | 'lines';
    readonly connectgaps: false;
    readonly line: { readonly color: string; readonly width: number; readonly dash: string };
    readonly marker: { readonly color: string; readonly size: number; readonly symbol: string | readonly string[] };
    readonly error_y?: { readonly type: 'data'; readonly symmetric: false; readonly array: readonly number[]; readonly arrayminus: readonly number[]; readonly color: string; readonly thickness: number; readonly width: number };
  };
  export type BareAxis = { readonly range: readonly [number, number]; readonly visible: false; readonly fixedrange: true; readonly autorange: false };
  export type DrawnAxis = {
    readonly type: 'category' | 'linear'; readonly fixedrange: true; readonly tickfont: { readonly family: string; readonly size: number; readonly color: string };
    readonly gridcolor: string; readonly linecolor: string; readonly zeroline: false; readonly showline: boolean; readonly showgrid: boolean; readonly automargin: true;
    readonly rangemode?: 'tozero' | 'normal'; readonly nticks?: number; readonly tickmode?: 'array'; readonly tickvals?: readonly (number | string)[]; readonly ticks: 'outside' | ''; readonly tickcolor: string; readonly tickformat?: string;
    readonly tickangle?: number; readonly title?: { readonly text: string; readonly font: { readonly family: string; readonly size: number; readonly color: string }; readonly standoff: number };
  };
  type Frame = { readonly width: number; readonly height: number; readonly showlegend: false; readonly paper_bgcolor: string; readonly plot_bgcolor: string };
  type Margin = { readonly l: number; readonly r: number; readonly t: number; readonly b: number; readonly pad: 0; readonly autoexpand: boolean };
  export type Layout = Frame & {
    readonly margin: Margin; readonly xaxis: BareAxis | DrawnAxis; readonly yaxis: BareAxis | DrawnAxis;
    /** Decimal point, and no comma between thousands. */ readonly separators?: '.'; readonly barmode?: 'group'; readonly bargap?: number; readonly bargroupgap?: number;
    /** On an axis of categories a place is the number of the category, from 0. */
    readonly shapes?: readonly { readonly type: 'line'; readonly xref: 'x'; readonly x0: number; readonly x1: number; readonly yref: 'y' | 'paper'; readonly y0: number; readonly y1: number; readonly line: { readonly color: string; readonly width: number; readonly dash: string } }[];
    readonly annotations?: readonly { readonly x: number; readonly xref: 'x'; readonly y: number; readonly yref: 'paper'; readonly text: string; readonly showarrow: false; readonly xanchor: 'left' | 'right'; readonly yanchor: 'top'; readonly font: { readonly family: string; readonly size: number; readonly color: string } }[];
  };
  export type Config = { readonly staticPlot: true; readonly displayModeBar: false; readonly responsive: false };
  export type Plotly = {
    react(element: HTMLElement, data: readonly (CurveTrace | BarTrace | PointTrace)[], layout: Layout, config: Config): Promise<unknown>;
    purge(element: HTMLElement): void;
  };
  const plotly: Plotly;
  export default plotly;
}
