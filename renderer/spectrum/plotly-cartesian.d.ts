/** The few calls of the plot library that the window makes; it comes without types of its own. */
declare module 'plotly.js-cartesian-dist-min' {
  export type Trace = {
    readonly type: 'scatter';
    readonly mode: 'lines';
    readonly x: readonly number[];
    readonly y: readonly number[];
    readonly line: { readonly color: string; readonly width: number; readonly dash?: string; readonly simplify?: boolean };
    readonly hoverinfo: 'skip';
    readonly connectgaps: false;
  };
  export type Axis = { readonly range: readonly [number, number]; readonly visible: false; readonly fixedrange: true; readonly autorange: false };
  export type Layout = {
    readonly width: number;
    readonly height: number;
    readonly margin: { readonly l: number; readonly r: number; readonly t: number; readonly b: number; readonly pad: 0; readonly autoexpand: false };
    readonly xaxis: Axis;
    readonly yaxis: Axis;
    readonly showlegend: false;
    readonly paper_bgcolor: string;
    readonly plot_bgcolor: string;
  };
  export type Config = { readonly staticPlot: true; readonly displayModeBar: false; readonly responsive: false };
  export type Plotly = {
    react(element: HTMLElement, data: readonly Trace[], layout: Layout, config: Config): Promise<unknown>;
    purge(element: HTMLElement): void;
  };
  const plotly: Plotly;
  export default plotly;
}
