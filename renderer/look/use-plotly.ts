import { useEffect, useState } from 'react';
import type { Plotly } from 'plotly.js-cartesian-dist-min';
import { loadPlotly } from './load-plotly.ts';

/** The drawing library once it is loaded; null until then. */
export function usePlotly(): Plotly | null {
  const [plotly, setPlotly] = useState<Plotly | null>(null);
  useEffect(() => {
    let shown = true;
    void loadPlotly().then((loaded) => { if (shown) setPlotly(loaded); });
    return () => { shown = false; };
  }, []);
  return plotly;
}
