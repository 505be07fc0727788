import { useMemo, useRef, useState } from 'react';
import type { MapView, PieceView } from '../../app/contract/pieces.ts';
import { acceptOutlines, moveMark, placeMark, removeMark, resizeMark } from '../../app/piece/edit-marks.ts';
import { gridAspect } from '../../app/piece/grid-drawing.ts';
import { MARK_LIMITS, type Mark } from '../../app/piece/mark.ts';
import { apply, AS_TAKEN, invert, shownPicture } from '../../app/piece/picture-view.ts';
import { Button } from '../look/button.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { focusSoon } from '../look/focus-soon.ts';
import { go } from '../router.ts';
import { useSize } from '../look/use-size.ts';
import { LIGHT_WORDS } from './light-words.ts';
import { MapList } from './map-list.tsx';
import { MapStage } from './map-stage.tsx';
import { MarkPanel } from './mark-panel.tsx';
import { markSign } from './stone-glyph.ts';
import { SuggestionPanel } from './suggestion-panel.tsx';
import { useCamera } from './use-camera.ts';
import { useGridPicture } from './use-grid-picture.ts';
import { useMapKeys } from './use-map-keys.ts';
import { useMapSheet } from './use-map-sheet.ts';
import { useNearPicture } from './use-near-picture.ts';
import { usePicture } from './use-picture.ts';
import { useSuggestions } from './use-suggestions.ts';

/** Room around the picture for the numbers that stand outside of it, px. */
const AROUND = 56;
/** How far an arrow moves a mark, in parts of the picture's width; and the picture, px. */
const NUDGE = { usual: 1 / 250, fine: 1 / 1500, picture: 60 } as const;
const ZOOM_STEP = 1.25;

/** One map of a piece: its picture with the marks, and beside it the selected mark or the list of all. */
export function MapEditor({ piece, map, active, onNew, onRemoveMap }: {
  readonly piece: PieceView; readonly map: MapView; readonly active: boolean; readonly onNew: () => void; readonly onRemoveMap: () => void;
}) {
  const { item } = piece;
  const editing = useMapSheet(map);
  const { sheet } = editing;
  const { ground } = sheet;
  const photograph = ground.kind === 'photograph' ? item.photographs.find((one) => one.id === ground.photographId) ?? null : null;
  const shownPhoto = usePicture(photograph);
  const grid = useGridPicture(ground);
  const picture = ground.kind === 'grid' ? grid : shownPhoto.picture;
  const look = photograph ? piece.looks.find((one) => one.photographId === photograph.id)?.view ?? AS_TAKEN : AS_TAKEN;
  const [asTaken, setAsTaken] = useState(false);
  const view = asTaken ? AS_TAKEN : look;
  const aspect = ground.kind === 'grid' ? gridAspect(ground) : picture ? picture.width / picture.height : 1;
  const shown = useMemo(() => (picture ? shownPicture(picture, view) : null), [picture, view]);
  const frameRef = useRef<HTMLDivElement>(null);
  const frame = useSize(frameRef);
  const [camera, cameraActions] = useCamera(frame, shown?.size ?? null, AROUND);
  const near = useNearPicture(photograph, picture, camera?.zoom ?? null);
  const [selected, setSelected] = useState<string | null>(null);
  const [placing, setPlacing] = useState(false);
  const suggestions = useSuggestions(photograph?.id ?? null, sheet.marks, aspect);
  const stoneIds = useMemo(() => item.stones.map((stone) => stone.id), [item.stones]);
  const stones = useMemo(() => new Map(item.stones.map((stone) => [stone.id, stone])), [item.stones]);
  const signs = useMemo(() => new Map(sheet.marks.map((mark) => [mark.id, markSign(mark, stones)])), [sheet.marks, stones]);
  const mark = sheet.marks.find((one) => one.id === selected) ?? null;
  const nudged = useRef<string | null>(null);

  const alter = (change: (marks: readonly Mark[]) => Mark[], merge = false) => {
    if (!merge) nudged.current = null;
    editing.change((now) => ({ ...now, marks: change(now.marks) }), merge);
  };
  const select = (id: string | null, focus = false) => {
    setSelected(id);
    if (id !== selected) nudged.current = null;
    if (id !== null && focus) focusSoon(`[data-mark="${id}"]`);
  };
  const placeAt = (x: number, y: number) => {
    const id = crypto.randomUUID();
    const radius = sheet.marks.at(-1)?.radius ?? MARK_LIMITS.radius.usual;
    alter((marks) => placeMark(marks, stoneIds, { id, x, y, radius }));
    select(id, true);
  };
  /** The middle of what is in sight, in parts of the upright picture. */
  const placeInSight = () => {
    if (!picture || !shown || !camera || !frame) return;
    const at = apply(invert(shown.matrix), { x: (frame.width / 2 - camera.x) / camera.zoom, y: (frame.height / 2 - camera.y) / camera.zoom });
    placeAt(at.x / picture.width, at.y / picture.height);
  };
  const takeOutlines = (ids: readonly string[]) => {
    const taken = suggestions.found.filter((one) => ids.includes(one.id));
    if (taken.length === 0) return;
    alter((marks) => acceptOutlines(marks, taken));
    if (ids.length === 1) suggestions.drop(ids[0]!); else suggestions.dropAll();
  };
  const nextMark = () => {
    const ordered = sheet.marks.toSorted((a, b) => a.number - b.number);
    const at = ordered.findIndex((one) => one.id === selected);
    const next = ordered[(at + 1) % Math.max(1, ordered.length)];
    if (next) select(next.id, true);
  };
  const nextOutline = () => {
    const at = suggestions.found.findIndex((one) => one.id === suggestions.chosen);
    const next = suggestions.found[(at + 1) % suggestions.found.length];
    if (next) { suggestions.choose(next.id); focusSoon(`[data-suggestion="${next.id}"]`); }
  };
  const removeSelected = () => {
    if (!mark) return;
    alter((marks) => removeMark(marks, mark.id));
    setSelected(null);
  };
  const openOutlines = suggestions.found.length > 0;
  useMapKeys({
    nudge: (dx, dy, fine) => {
      if (!mark) { cameraActions.shiftBy(-dx * NUDGE.picture, -dy * NUDGE.picture); return; }
      const by = fine ? NUDGE.fine : NUDGE.usual;
      const merge = nudged.current === mark.id;
      alter((marks) => moveMark(marks, mark.id, mark.x + dx * by, mark.y + dy * by * aspect), merge);
      nudged.current = mark.id;
    },
    size: (factor) => {
      if (!mark) { cameraActions.zoomBy(factor > 1 ? ZOOM_STEP : 1 / ZOOM_STEP); return; }
      alter((marks) => resizeMark(marks, mark.id, factor));
    },
    next: () => { if (openOutlines) nextOutline(); else nextMark(); },
    remove: () => { if (openOutlines && suggestions.chosen !== null && mark === null) suggestions.drop(suggestions.chosen); else removeSelected(); },
    leave: () => { if (placing) setPlacing(false); else if (mark) select(null); else suggestions.dropAll(); },
    take: () => { if (placing) placeInSight(); else if (suggestions.chosen !== null) takeOutlines([suggestions.chosen]); },
    takeAll: () => { takeOutlines(suggestions.found.map((one) => one.id)); },
    place: () => { setPlacing(!placing); },
    find: suggestions.ask,
    open: () => { if (mark?.stoneId) go({ view: 'stone', id: mark.stoneId }); },
    fit: cameraActions.fit, undo: editing.undo, redo: editing.redo, save: editing.save,
  }, active);

  const alt = photograph ? `${photograph.caption || photograph.name}, ${LIGHT_WORDS[photograph.light]}` : 'grid for the stones';
  return (
    <div className="piece">
      <div className="piece-middle">
        <div className="map-bar" role="toolbar" aria-label="Map">
          <Button keys="P" aria-pressed={placing} onPress={() => { setPlacing(!placing); }}>{placing ? 'Stop placing' : 'Place marks'}</Button>
          {photograph ? <Button keys="S" isDisabled={suggestions.asking} onPress={suggestions.ask}>{suggestions.asking ? 'Looking for stones' : 'Find stones'}</Button> : null}
          <span className="grow" />
          <Button kind="quiet" aria-label="Further away" onPress={() => { cameraActions.zoomBy(1 / ZOOM_STEP); }}>−</Button>
          <Button kind="quiet" aria-label="Nearer" onPress={() => { cameraActions.zoomBy(ZOOM_STEP); }}>+</Button>
          <Button kind="quiet" keys="0" onPress={cameraActions.fit}>Whole</Button>
          <Button kind="quiet" keys="Mod+Z" isDisabled={!editing.canUndo} onPress={editing.undo}>Undo</Button>
          <Button kind="quiet" keys="Mod+Y" isDisabled={!editing.canRedo} onPress={editing.redo}>Redo</Button>
          <Button kind="main" keys="Mod+S" isDisabled={!editing.changed || editing.saving} onPress={editing.save}>{editing.saving ? 'Saving' : 'Save the map'}</Button>
        </div>
        {editing.overtaken ? (
          <div className="map-overtaken"><Trouble message={`${editing.overtaken.by} saved version ${editing.overtaken.version} of this map meanwhile.`} next="Save yours on top of it (both stay in its history), or drop yours and see theirs." /><Button onPress={editing.drop}>Drop mine</Button></div>
        ) : null}
        <div ref={frameRef} className="map-frame">
          {shownPhoto.failure ? <div className="map-trouble"><Trouble {...shownPhoto.failure} /><p className="second">The marks are kept; choose another picture or a grid with a new map.</p></div> : null}
          {!picture && !shownPhoto.failure ? <Working what="Drawing the picture" /> : null}
          {near && camera ? (
            <MapStage picture={near} alt={alt} view={view} camera={camera} cameraActions={cameraActions} marks={sheet.marks} signs={signs} selected={selected} placing={placing}
              suggestions={suggestions.found} chosenSuggestion={suggestions.chosen} onSelect={select} onChooseSuggestion={(id) => { select(null); suggestions.choose(id); }} onPlace={placeAt}
              onMove={(id, x, y, first) => { if (first) select(id); alter((marks) => moveMark(marks, id, x, y), !first); }} />
          ) : null}
        </div>
        <div className="map-hint quiet"><p className="grow">{placing ? 'Click a stone, or press Enter to place a mark in the middle of what you see; then arrows move it. Escape ends placing.'
          : mark ? 'Arrows move the mark, with Shift finely; + and − size it; N goes to the next.' : 'Tab or N goes from mark to mark. Wheel or + and − bring it nearer, arrows or dragging shift it.'}</p>
          {look !== AS_TAKEN ? <Button kind="quiet" aria-pressed={asTaken} onPress={() => { setAsTaken(!asTaken); }}>{asTaken ? 'Show as set' : 'Show as taken'}</Button> : null}
        </div>
      </div>
      <aside className="piece-margin">
        {openOutlines ? <SuggestionPanel suggestions={suggestions} onTake={() => { if (suggestions.chosen !== null) takeOutlines([suggestions.chosen]); }} onTakeAll={() => { takeOutlines(suggestions.found.map((one) => one.id)); }} /> : null}
        {mark ? <MarkPanel key={mark.id} mark={mark} marks={sheet.marks} item={item} onChange={alter} onRemove={removeSelected} onLeave={nextMark} />
          : <MapList item={item} map={map} marks={sheet.marks} others={piece.maps.filter((one) => one.id !== map.id).map((one) => one.marks)} aspect={aspect} onChange={alter} onSelect={(id) => { select(id, true); }} />}
        <div className="map-acts"><Button kind="quiet" onPress={onNew}>New map</Button><Button kind="quiet" onPress={onRemoveMap}>Take this map out</Button></div>
      </aside>
    </div>
  );
}
