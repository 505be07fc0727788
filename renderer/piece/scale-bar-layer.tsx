import { scaleBar } from '../../app/piece/scale-bar.ts';

const MOST = 140;

/** A bar of a round length at the lower left of the frame; `perMillimetre` in px of the frame. */
export function ScaleBarLayer({ perMillimetre }: { readonly perMillimetre: number | null }) {
  if (perMillimetre === null || !(perMillimetre > 0)) return null;
  const bar = scaleBar(perMillimetre, MOST);
  return <div className="scale-bar" role="img" aria-label={`scale bar, ${bar.label}`}><span>{bar.label}</span><i style={{ width: bar.length }} /></div>;
}
