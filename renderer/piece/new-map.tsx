import { useRef, useState } from 'react';
import type { ItemView, PhotographView } from '../../app/contract/cases.ts';
import { USUAL_GRID, type MapGround } from '../../app/piece/mark.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';
import { go } from '../router.ts';
import { drawingToPicture } from './drawing-to-picture.ts';
import { LIGHT_WORDS } from './light-words.ts';
import { Thumbnail } from './thumbnail.tsx';

const GRID = 'grid';
const MOST_FIELDS = 40;

/** What a new map lies on: one of the piece's pictures, a drawing that is added now, or a plain grid. */
export function NewMap({ caseId, item, name: usualName, onClose }: { readonly caseId: string; readonly item: ItemView; readonly name: string; readonly onClose: () => void }) {
  const [name, setName] = useState(usualName);
  const [ground, setGround] = useState<string>(item.photographs[0]?.id ?? GRID);
  const [columns, setColumns] = useState(String(USUAL_GRID.columns));
  const [rows, setRows] = useState(String(USUAL_GRID.rows));
  const [tried, setTried] = useState(false);
  const picker = useRef<HTMLInputElement>(null);
  const add = useChange('photographs.add');
  const save = useChange('pieces.saveMap');
  const notes = useNotes();
  const count = (text: string): number | null => { const n = readNumber(text); return n !== undefined && Number.isInteger(n) && n >= 1 && n <= MOST_FIELDS ? n : null; };
  const fields = [count(columns), count(rows)] as const;
  const chosen = (): MapGround | null => {
    if (ground !== GRID) return { kind: 'photograph', photographId: ground };
    return fields[0] !== null && fields[1] !== null ? { kind: 'grid', columns: fields[0], rows: fields[1] } : null;
  };
  const begin = () => {
    setTried(true);
    const on = chosen();
    if (name.trim() === '' || on === null || save.isPending) return;
    save.mutate({ mapId: null, itemId: item.id, onVersion: 0, name, ground: on, marks: [] }, {
      onSuccess: (map) => { go({ view: 'piece', id: item.id, panel: map.id }); onClose(); },
      onError: (e) => { notes.complain(e.failure); },
    });
  };
  const take = async (file: File | undefined) => {
    if (!file) return;
    const drawing = await drawingToPicture(file);
    if (!drawing.ok) { notes.complain(drawing.error); return; }
    add.mutate({ caseId, itemId: item.id, stoneId: null, caption: '', light: 'drawing', ...drawing.value }, {
      onSuccess: (photo) => { setGround(photo.id); },
      onError: (e) => { notes.complain(e.failure); },
    });
  };
  useKey('Mod+Enter', begin);
  const line = (photo: PhotographView) => (
    <label key={photo.id} className="ground-choice"><input type="radio" name="ground" checked={ground === photo.id} onChange={() => { setGround(photo.id); }} /><Thumbnail photograph={photo} className="thumb-line" />
      <span><span className="two-lines">{photo.caption || photo.name}</span><span className="quiet">{LIGHT_WORDS[photo.light]}</span></span></label>
  );
  return (
    <Dialog title={`New map of item ${item.label}`} width={520} onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isDisabled={save.isPending || add.isPending} onPress={begin}>Begin the map</Button>}>
      <Field label="Name" value={name} onChange={setName} autoFocus hint="What is seen: front, back, clasp." error={tried && name.trim() === '' ? 'Give the map a name, for instance “front”.' : undefined} />
      <fieldset className="ground-choices"><legend className="label">Marks are placed on</legend>
        {item.photographs.map(line)}
        <label className="ground-choice"><input type="radio" name="ground" checked={ground === GRID} onChange={() => { setGround(GRID); }} /><span>a plain grid, where there is no picture</span></label>
        {ground === GRID ? (
          <div className="fields-two">
            <Field label="Columns" mono value={columns} onChange={setColumns} error={tried && fields[0] === null ? `From 1 to ${MOST_FIELDS}.` : undefined} />
            <Field label="Rows" mono value={rows} onChange={setRows} error={tried && fields[1] === null ? `From 1 to ${MOST_FIELDS}.` : undefined} />
          </div>
        ) : null}
      </fieldset>
      <input ref={picker} type="file" accept="image/png,image/jpeg,image/svg+xml" hidden aria-label="Drawing of the piece" onChange={(e) => { void take(e.target.files?.[0]).then(() => { e.target.value = ''; }); }} />
      <div><Button kind="quiet" isPending={add.isPending} onPress={() => picker.current?.click()}>Add a drawing (PNG, JPEG or SVG)</Button></div>
    </Dialog>
  );
}
