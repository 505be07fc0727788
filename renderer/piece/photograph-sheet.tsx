import { useRef, useState, type PointerEvent as ReactPointerEvent } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import { apply, AS_TAKEN, pointsPerMillimetre, shownPicture, type PictureView, type Point } from '../../app/piece/picture-view.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { focusSoon } from '../look/focus-soon.ts';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { shortDigest, showMoment } from '../look/time.ts';
import { useAsk, useAskOnce, useChange } from '../queries.ts';
import { useSize } from '../look/use-size.ts';
import { exifFacts } from './exif-words.ts';
import { LIGHT_WORDS } from './light-words.ts';
import { cropTo, scaleAlong } from './look-drag.ts';
import { LookPanel, type LookTool } from './look-panel.tsx';
import { PictureLayer } from './picture-layer.tsx';
import { ScaleBarLayer } from './scale-bar-layer.tsx';
import { useCamera } from './use-camera.ts';
import { useNearPicture } from './use-near-picture.ts';
import { usePicture } from './use-picture.ts';
import { useWheelZoom } from './use-wheel-zoom.ts';
import './piece.css';

/** Takes the cursor when a button that had it goes away: Escape would otherwise reach nobody. */
const FRAME = '.photograph-frame';
const PAN_PX = 60;
const ZOOM_STEP = 1.25;

/** A photograph, large: zoomed and shifted, turned and cropped as a view, with what its file says of itself. */
export function PhotographSheet({ photograph, onClose }: { readonly photograph: PhotographView; readonly onClose: () => void }) {
  const { laboratory } = useHouse();
  const notes = useNotes();
  const { picture, failure } = usePicture(photograph);
  const facts = useAskOnce('images.facts', { photographId: photograph.id });
  const look = useAsk('photographs.look', { photographId: photograph.id });
  const saveLook = useChange('photographs.saveLook');
  const content = useChange('photographs.content');
  const [own, setOwn] = useState<PictureView | null>(null);
  const [asTaken, setAsTaken] = useState(false);
  const [tool, setTool] = useState<LookTool>('shift');
  const saved = look.data?.view ?? AS_TAKEN;
  const set = own ?? saved;
  const view = asTaken ? AS_TAKEN : set;
  const changed = own !== null && JSON.stringify(own) !== JSON.stringify(saved);
  const frameRef = useRef<HTMLDivElement>(null);
  const frame = useSize(frameRef);
  const shown = picture ? shownPicture(picture, view) : null;
  const [camera, actions] = useCamera(frame, shown?.size ?? null);
  const near = useNearPicture(photograph, picture, camera?.zoom ?? null);
  const drag = useRef<{ from: Point; last: Point } | null>(null);
  const [line, setLine] = useState<{ from: Point; to: Point } | null>(null);
  useWheelZoom(frameRef, actions.zoomBy);

  const inFrame = (e: ReactPointerEvent): Point => { const box = frameRef.current!.getBoundingClientRect(); return { x: e.clientX - box.left, y: e.clientY - box.top }; };
  const inShown = ({ x, y }: Point): Point => ({ x: (x - camera!.x) / camera!.zoom, y: (y - camera!.y) / camera!.zoom });
  const move = (e: ReactPointerEvent) => {
    if (!drag.current) return;
    const at = inFrame(e);
    if (tool === 'shift') actions.shiftBy(at.x - drag.current.last.x, at.y - drag.current.last.y);
    else setLine({ from: drag.current.from, to: at });
    drag.current.last = at;
  };
  const up = () => {
    const now = drag.current;
    drag.current = null;
    setLine(null);
    if (!now || tool === 'shift' || !picture || !camera) return;
    const made = (tool === 'crop' ? cropTo : scaleAlong)(picture, view, inShown(now.from), inShown(now.last));
    if (made) { setOwn(made); setTool('shift'); }
  };
  const keys: Readonly<Record<string, () => void>> = {
    '+': () => { actions.zoomBy(ZOOM_STEP); }, '=': () => { actions.zoomBy(ZOOM_STEP); }, '-': () => { actions.zoomBy(1 / ZOOM_STEP); }, 0: actions.fit, 1: actions.actual,
    ArrowLeft: () => { actions.shiftBy(PAN_PX, 0); }, ArrowRight: () => { actions.shiftBy(-PAN_PX, 0); }, ArrowUp: () => { actions.shiftBy(0, PAN_PX); }, ArrowDown: () => { actions.shiftBy(0, -PAN_PX); },
  };
  const perMillimetre = picture ? pointsPerMillimetre(picture, view) : null;
  const ends = picture && shown && camera && view.scale ? [view.scale.from, view.scale.to].map((end) => { const at = apply(shown.matrix, { x: end.x * picture.width, y: end.y * picture.height }); return { x: at.x * camera.zoom + camera.x, y: at.y * camera.zoom + camera.y }; }) : [];
  const name = photograph.caption || photograph.name;
  return (
    <Dialog title={name} width={1320} onClose={onClose} footer={(
      <>
        <span className="quiet grow">{LIGHT_WORDS[photograph.light]} · kept {showMoment(photograph.at, laboratory.zone)} · {photograph.size.toLocaleString('en')} bytes · <span className="mono">{shortDigest(photograph.sha256)}</span></span>
        {changed ? <><Button kind="quiet" onPress={() => { setOwn(null); focusSoon(FRAME); }}>Drop the changes</Button><Button kind="main" isPending={saveLook.isPending} onPress={() => { saveLook.mutate({ photographId: photograph.id, view: set }, { onSuccess: () => { setOwn(null); focusSoon(FRAME); notes.say('Kept how it is looked at; the photograph itself is unchanged.'); }, onError: (e) => { notes.complain(e.failure); } }); }}>Keep this view</Button></> : null}
        <Button onPress={() => { content.mutate({ photographId: photograph.id }, { onSuccess: (f) => { saveFile(f.name, f.mediaType, f.bytes); }, onError: (e) => { notes.complain(e.failure); } }); }}>Save as it came</Button>
      </>
    )}>
      <div className="photograph-sheet">
        {/* The picture is worked on with keys as well as by hand. */}
        <div ref={frameRef} className={`photograph-frame ${tool === 'shift' ? '' : 'map-stage-placing'}`} tabIndex={0} role="group" aria-label="The photograph: wheel or + and − zoom, arrows shift, 0 shows it whole"
          onKeyDown={(e) => { const run = keys[e.key]; if (run) { e.preventDefault(); run(); } }}
          onPointerDown={(e) => { if (e.button !== 0) return; const at = inFrame(e); drag.current = { from: at, last: at }; e.currentTarget.setPointerCapture(e.pointerId); }} onPointerMove={move} onPointerUp={up} onPointerCancel={() => { drag.current = null; setLine(null); }}>
          {failure ? <div className="map-trouble"><Trouble {...failure} /></div> : null}
          {!picture && !failure ? <Working what="Drawing the photograph" /> : null}
          {picture && near && shown && camera ? <PictureLayer url={near.url} alt={name} picture={picture} shown={shown} camera={camera} /> : null}
          <svg className="map-marks" aria-hidden="true">
            {ends.length === 2 ? [['leader-under'], ['leader-over']].map(([c]) => <line key={c} className={c} x1={ends[0]!.x} y1={ends[0]!.y} x2={ends[1]!.x} y2={ends[1]!.y} />) : null}
            {line && tool === 'scale' ? <line className="leader-over" x1={line.from.x} y1={line.from.y} x2={line.to.x} y2={line.to.y} /> : null}
            {line && tool === 'crop' ? <rect className="crop-drag" x={Math.min(line.from.x, line.to.x)} y={Math.min(line.from.y, line.to.y)} width={Math.abs(line.to.x - line.from.x)} height={Math.abs(line.to.y - line.from.y)} /> : null}
          </svg>
          <ScaleBarLayer perMillimetre={perMillimetre === null || !camera ? null : perMillimetre * camera.zoom} />
        </div>
        <aside className="photograph-facts">
          <div className="row gap4"><Button aria-label="Further away" onPress={() => { actions.zoomBy(1 / ZOOM_STEP); }}>−</Button><Button aria-label="Nearer" onPress={() => { actions.zoomBy(ZOOM_STEP); }}>+</Button><Button keys="0" onPress={actions.fit}>Whole</Button></div>
          <LookPanel view={set} tool={tool} onView={(next) => { setAsTaken(false); setOwn(next); }} onTool={(next) => { setAsTaken(false); setTool(next); }} />
          {JSON.stringify(set) !== JSON.stringify(AS_TAKEN) ? <Button aria-pressed={asTaken} onPress={() => { setAsTaken(!asTaken); }}>{asTaken ? 'Show as set' : 'Show as taken'}</Button> : null}
          <p className="label">What the file says</p>
          {facts.isError ? <p className="second">{facts.error.failure.message}</p> : null}
          {facts.data ? (
            <dl className="exif">
              <div><dt>Size, upright</dt><dd className="mono">{facts.data.width} × {facts.data.height}</dd></div>
              <div><dt>Kind</dt><dd>{facts.data.format.toUpperCase()}, {facts.data.bits} bit{facts.data.colours === 'rgb' ? '' : `, ${facts.data.colours === 'cmyk' ? 'printing colours' : 'grey'}`}</dd></div>
              {exifFacts(facts.data.exif).map((fact) => <div key={fact.name}><dt>{fact.name}</dt><dd>{fact.text}</dd></div>)}
            </dl>
          ) : null}
          {facts.data && exifFacts(facts.data.exif).length === 0 ? <p className="second">The camera wrote nothing into it: no time, no exposure.</p> : null}
        </aside>
      </div>
    </Dialog>
  );
}
