import type { LegendPlace } from '../../app/figure/draw-legend.ts';
import type { FigureModel } from '../../app/figure/figure-model.ts';

/** The names under a figure of several curves: pointing at one, or going to it with the keys, draws its curve thicker. */
export function LegendPointers({ places, model, onPointed }: { readonly places: readonly LegendPlace[]; readonly model: FigureModel; readonly onPointed: (label: string | null) => void }) {
  return places.map(({ curve, x, y, width, height }) => {
    const label = model.curves[curve]?.label ?? '';
    const leave = () => { onPointed(null); };
    const point = () => { onPointed(label); };
    return <button key={curve} type="button" className="legend-pointer" style={{ left: x, top: y, width, height }} aria-label={`Show ${label} thicker`} title={label} onPointerEnter={point} onPointerLeave={leave} onFocus={point} onBlur={leave} />;
  });
}
