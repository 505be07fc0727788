import { useLayoutEffect, useRef, useState } from 'react';
import type { ItemView } from '../../app/contract/cases.ts';
import type { AnalysisOf } from '../../app/contract/images.ts';
import { useKey } from '../keys/keymap.ts';
import { Segmented } from '../look/choice.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Keys } from '../look/keys.tsx';
import { usePicture } from '../piece/use-picture.ts';

type Shown = 'long' | 'short' | 'both';
const MARGIN_PX = 16;

/** Size of an element as it is on the screen. */
function useSize() {
  const frame = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const watcher = new ResizeObserver(() => { setSize({ width: element.clientWidth, height: element.clientHeight }); });
    watcher.observe(element);
    return () => { watcher.disconnect(); };
  }, []);
  return { frame, size };
}

/** Both photographs in one place, the short-wave one turned and moved onto the long-wave one; numbered marks over them. */
export function PairStage({ item, analysis, selected, onSelect }: { readonly item: ItemView; readonly analysis: AnalysisOf<'pair'>; readonly selected: string | null; readonly onSelect: (markId: string) => void }) {
  const { parameters, result } = analysis.content;
  const photographOf = (id: string) => item.photographs.find((photograph) => photograph.id === id) ?? null;
  const long = usePicture(photographOf(parameters.longWave.photographId));
  const short = usePicture(photographOf(parameters.shortWave.photographId));
  const [shown, setShown] = useState<Shown>('long');
  const [part, setPart] = useState(50);
  const { frame, size } = useSize();
  useKey('B', () => { setShown(shown === 'long' ? 'short' : 'long'); });
  const failure = long.failure ?? short.failure;
  const whole = long.picture;
  const scale = whole ? Math.min((size.width - 2 * MARGIN_PX) / whole.width, (size.height - 2 * MARGIN_PX) / whole.height) : 0;
  const [width, height] = whole ? [Math.max(0, whole.width * scale), Math.max(0, whole.height * scale)] : [0, 0];
  const { dx, dy, degrees, scale: bigger } = result.alignment.placement;
  const laid = { transform: `rotate(${-degrees}deg) scale(${1 / bigger}) translate(${-dx * scale}px, ${-dy * scale}px)` };
  const clip = shown === 'both' ? { clipPath: `inset(0 0 0 ${part}%)` } : { visibility: shown === 'short' ? 'visible' : 'hidden' } as const;
  return (
    <div className="piece-middle">
      <div className="map-bar">
        <Segmented label="Which photograph" value={shown} onChange={setShown} options={[{ value: 'long', label: 'long-wave' }, { value: 'short', label: 'short-wave' }, { value: 'both', label: 'half and half' }]} />
        {shown === 'both' ? <input type="range" className="pair-part" aria-label="Where long-wave ends and short-wave begins" min={0} max={100} value={part} onChange={(e) => { setPart(Number(e.target.value)); }} /> : <span className="quiet row gap8 pair-hint">change over <Keys of="B" /></span>}
      </div>
      <div className="pair-stage" ref={frame}>
        {failure ? <div className="map-trouble"><Trouble {...failure} /></div> : !whole || !short.picture ? <Working what="Opening the photographs" /> : (
          <div className="pair-frame" style={{ width, height }}>
            <img src={whole.url} alt="The piece under long-wave ultraviolet" width={width} height={height} />
            <div className="pair-over" style={clip}><img src={short.picture.url} alt="The piece under short-wave ultraviolet" width={width} height={height} style={laid} /></div>
            <svg className="pair-marks" width={width} height={height} aria-hidden="true">
              {result.stones.map((stone) => <PairMark key={stone.markId} number={stone.number} x={stone.x * width} y={stone.y * height} radius={stone.radius * width} standsOut={stone.standsOut} selected={stone.markId === selected} onSelect={() => { onSelect(stone.markId); }} />)}
            </svg>
          </div>
        )}
      </div>
    </div>
  );
}

/** Length of a frame's corner, in the radius. */
const CORNER = 0.24;
/** Letter height of a mark's number is at least this, px; on small marks it stands beside. */
const BESIDE_PX = 5;

function PairMark({ number, x, y, radius, standsOut, selected, onSelect }: { readonly number: number; readonly x: number; readonly y: number; readonly radius: number; readonly standsOut: boolean; readonly selected: boolean; readonly onSelect: () => void }) {
  const framed = standsOut || selected;
  const reach = framed ? radius + 3 : 0.72 * radius + 2; // outside the corners where there are some
  return (
    <g className={`pair-mark ${selected ? 'pair-mark-selected' : ''} ${standsOut ? 'pair-mark-out' : ''}`} onClick={onSelect}>
      <rect className="mark-hit" x={x - radius} y={y - radius} width={2 * radius} height={2 * radius} />
      {framed ? <path className="pair-corners" d={[[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([sx = 0, sy = 0]) => `M${x + sx * radius} ${y + sy * (radius - CORNER * radius)}V${y + sy * radius}H${x + sx * (radius - CORNER * radius)}`).join('')} /> : null}
      <text x={x + reach} y={y - reach - BESIDE_PX + 4}>{number}</text>
    </g>
  );
}
