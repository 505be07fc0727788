import { useCallback, useMemo, useRef, type PointerEvent as ReactPointerEvent } from 'react';
import type { Mark } from '../../app/piece/mark.ts';
import { apply, invert, pointsPerMillimetre, shownPicture, type PictureView, type Point } from '../../app/piece/picture-view.ts';
import { drawMarks, MarkLayer, SuggestionLayer } from './mark-layer.tsx';
import { PictureLayer } from './picture-layer.tsx';
import { ScaleBarLayer } from './scale-bar-layer.tsx';
import type { MarkSign } from './stone-glyph.ts';
import type { Suggestion } from './use-suggestions.ts';
import type { Camera, CameraActions } from './use-camera.ts';
import type { Picture } from './use-picture.ts';
import { useWheelZoom } from './use-wheel-zoom.ts';

/** A press that moves less than this is a click. */
const CLICK_PX = 4;

type Press = { readonly at: Point; readonly kind: 'mark' | 'picture'; readonly id: string | null; last: Point; moved: boolean };

type Props = {
  readonly picture: Picture; readonly alt: string; readonly view: PictureView; readonly camera: Camera; readonly cameraActions: CameraActions;
  readonly marks: readonly Mark[]; readonly signs: ReadonlyMap<string, MarkSign>; readonly selected: string | null;
  readonly suggestions: readonly Suggestion[]; readonly chosenSuggestion: string | null;
  /** True while a click places a mark. */
  readonly placing: boolean;
  readonly onSelect: (id: string | null) => void;
  readonly onChooseSuggestion: (id: string) => void;
  /** Parts of the upright picture. */
  readonly onPlace: (x: number, y: number) => void;
  /** The first move of a drag begins a step of its own. */
  readonly onMove: (id: string, x: number, y: number, first: boolean) => void;
};

/** The picture with its marks: wheel zooms, dragging shifts the picture or moves a mark, a click selects or places. */
export function MapStage(p: Props) {
  const { picture, view, camera, cameraActions, marks, signs, selected } = p;
  const place = useRef<HTMLDivElement>(null);
  const press = useRef<Press | null>(null);
  const shown = useMemo(() => shownPicture(picture, view), [picture, view]);
  const drawn = useMemo(() => drawMarks(marks, signs, picture, shown, camera.zoom), [marks, signs, picture, shown, camera.zoom]);
  const outlines = useMemo(() => p.suggestions.map((one) => {
    const at = apply(shown.matrix, { x: one.x * picture.width, y: one.y * picture.height });
    return { ...one, cx: at.x * camera.zoom, cy: at.y * camera.zoom, r: one.radius * picture.width * camera.zoom };
  }), [p.suggestions, shown, picture, camera.zoom]);
  const perMillimetre = pointsPerMillimetre(picture, view);

  const inFrame = (event: { clientX: number; clientY: number }): Point => {
    const box = place.current!.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const inPicture = ({ x, y }: Point): Point => {
    const at = apply(invert(shown.matrix), { x: (x - camera.x) / camera.zoom, y: (y - camera.y) / camera.zoom });
    return { x: at.x / picture.width, y: at.y / picture.height };
  };

  useWheelZoom(place, cameraActions.zoomBy);

  const down = (event: ReactPointerEvent) => {
    if (event.button !== 0) return;
    const target = event.target as Element;
    const id = target.closest('[data-mark]')?.getAttribute('data-mark') ?? null;
    const suggestion = target.closest('[data-suggestion]')?.getAttribute('data-suggestion') ?? null;
    if (suggestion !== null) { p.onChooseSuggestion(suggestion); return; }
    const at = inFrame(event);
    press.current = { at, last: at, kind: id === null ? 'picture' : 'mark', id, moved: false };
    place.current?.setPointerCapture(event.pointerId);
  };
  const move = (event: ReactPointerEvent) => {
    const now = press.current;
    if (!now) return;
    const at = inFrame(event);
    if (!now.moved && Math.hypot(at.x - now.at.x, at.y - now.at.y) < CLICK_PX) return;
    const first = !now.moved;
    now.moved = true;
    if (now.kind === 'mark') {
      const mark = marks.find((one) => one.id === now.id);
      if (!mark) return;
      const [from, to] = [inPicture(now.last), inPicture(at)];
      p.onMove(mark.id, mark.x + to.x - from.x, mark.y + to.y - from.y, first);
    } else cameraActions.shiftBy(at.x - now.last.x, at.y - now.last.y);
    now.last = at;
  };
  const up = () => {
    const now = press.current;
    press.current = null;
    if (!now || now.moved) return;
    if (now.kind === 'mark') { p.onSelect(now.id); return; }
    const at = inPicture(now.at);
    if (p.placing && at.x >= 0 && at.x <= 1 && at.y >= 0 && at.y <= 1) p.onPlace(at.x, at.y);
    else p.onSelect(null);
  };
  const { onSelect } = p;
  const select = useCallback((id: string) => { onSelect(id); }, [onSelect]);

  return (
    <div ref={place} className={`map-stage ${p.placing ? 'map-stage-placing' : ''}`} onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={() => { press.current = null; }}>
      <PictureLayer url={picture.url} alt={p.alt} picture={picture} shown={shown} camera={camera} />
      <svg className="map-marks" role="group" aria-label="Marks"><g transform={`translate(${camera.x} ${camera.y})`}>
        <SuggestionLayer outlines={outlines} chosen={p.chosenSuggestion} onChoose={p.onChooseSuggestion} />
        <MarkLayer drawn={drawn} selected={selected} onSelect={select} />
      </g></svg>
      <ScaleBarLayer perMillimetre={perMillimetre === null ? null : perMillimetre * camera.zoom} />
    </div>
  );
}
