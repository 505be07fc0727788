import type { Plotly } from 'plotly.js-cartesian-dist-min';

let loading: Promise<Plotly> | null = null;

/** The plot library, loaded by the first view that plots; the start of the program does not wait for it. */
export const loadPlotly = (): Promise<Plotly> => (loading ??= import('plotly.js-cartesian-dist-min').then((m) => m.default));
