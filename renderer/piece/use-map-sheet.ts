import { useCallback, useEffect, useRef, useState } from 'react';
import type { MapView } from '../../app/contract/pieces.ts';
import { beginHistory, redo, stepOn, undo, type EditHistory } from '../../app/piece/edit-history.ts';
import { door } from '../door.ts';
import { useKeptDraft } from '../drafts/use-kept-draft.ts';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { mapDraftKey, readMapDraft, sameSheet, type MapDraft, type MapSheet } from './map-draft.ts';

const sheetOf = ({ name, ground, marks }: MapView | MapDraft): MapSheet => ({ name, ground, marks });
const keepAll = (content: MapDraft): unknown => content;

export type MapEditing = {
  readonly sheet: MapSheet;
  /** True where something stands on the sheet that is not saved. */
  readonly changed: boolean;
  readonly canUndo: boolean; readonly canRedo: boolean;
  /** Null until it is known whether unsaved changes were kept. */
  readonly ready: boolean;
  readonly saving: boolean;
  /** Somebody else saved meanwhile: who, and on which version. */
  readonly overtaken: { readonly by: string; readonly version: number } | null;
  /** `merge` makes one step of it with the one before: a drag, a row of arrow keys. */
  change(alter: (sheet: MapSheet) => MapSheet, merge?: boolean): void;
  undo(): void; redo(): void;
  save(): void;
  /** Drops what is not saved. */
  drop(): void;
};

/**
 * What stands on the sheet of a map: its steps back and forward, what is kept of it while it is not saved, and saving it as the next version.
 * Give the component a key of the map's id: another map is another sheet.
 */
export function useMapSheet(map: MapView): MapEditing {
  const [history, setHistory] = useState<EditHistory<MapSheet>>(() => beginHistory(sheetOf(map)));
  const [onVersion, setOnVersion] = useState(map.version);
  const [ready, setReady] = useState(false);
  const notes = useNotes();
  const save = useChange('pieces.saveMap');
  const sheet = history.now;
  const saved = sheetOf(map);
  const changed = !sameSheet(sheet, saved);
  const key = mapDraftKey(map.id);

  const draft = useRef<{ sheet: MapSheet; content: MapDraft } | null>(null);
  if (draft.current?.sheet !== sheet || draft.current.content.onVersion !== onVersion) draft.current = { sheet, content: { onVersion, ...sheetOf({ ...map, ...sheet }) } };
  const kept = useKeptDraft(key, ready && changed ? draft.current.content : null, keepAll);
  const { forget } = kept;

  useEffect(() => {
    let wanted = true;
    void door.call('drafts.get', { key }).then((reply) => {
      if (!wanted) return;
      const found = reply.ok ? readMapDraft(reply.value.content) : null;
      if (found) {
        setHistory((now) => stepOn(now, sheetOf(found)));
        setOnVersion(found.onVersion);
        notes.say('Marks that were not saved last time are here again.');
      }
      setReady(true);
    });
    return () => { wanted = false; };
    // Once for each map: the key of the component is the map's id.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [key]);

  // Another person's version is taken over as long as nothing of one's own would be lost.
  const [standing, setStanding] = useState(map);
  useEffect(() => {
    if (map.version === standing.version) return;
    if (sameSheet(sheet, sheetOf(standing)) || sameSheet(sheet, sheetOf(map))) {
      setHistory((now) => (sameSheet(now.now, sheetOf(map)) ? now : stepOn(now, sheetOf(map))));
      setOnVersion(map.version);
    }
    setStanding(map);
  }, [map, standing, sheet]);

  const change = useCallback<MapEditing['change']>((alter, merge = false) => { setHistory((now) => stepOn(now, alter(now.now), merge)); }, []);
  const overtaken = changed && onVersion !== map.version ? { by: map.by, version: map.version } : null;
  return {
    sheet, changed, ready, overtaken, saving: save.isPending, canUndo: history.past.length > 0, canRedo: history.future.length > 0,
    change,
    undo: () => { setHistory(undo); },
    redo: () => { setHistory(redo); },
    save: () => {
      if (!changed || save.isPending) return;
      save.mutate({ mapId: map.id, itemId: map.itemId, onVersion: overtaken ? map.version : onVersion, name: sheet.name, ground: sheet.ground, marks: [...sheet.marks] }, {
        onSuccess: (now) => {
          setOnVersion(now.version);
          void forget();
          notes.say(`The map “${now.name}” is saved, version ${now.version}.`);
        },
        onError: (e) => { notes.complain(e.failure); },
      });
    },
    drop: () => {
      setHistory((now) => stepOn(now, saved));
      setOnVersion(map.version);
      void forget();
    },
  };
}
