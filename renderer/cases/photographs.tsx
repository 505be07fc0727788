import { useRef, useState } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import { PICTURE_KINDS } from '../../app/custody/check-picture.ts';
import { readPictures } from '../intake/photo-strip.tsx';
import { Button } from '../look/button.tsx';
import { Empty } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { shortDigest } from '../look/time.ts';
import { useChange } from '../queries.ts';
import { LIGHT_WORDS } from '../piece/light-words.ts';
import { PhotographSheet } from '../piece/photograph-sheet.tsx';
import { Thumbnail } from '../piece/thumbnail.tsx';
import './cases.css';

/** Photographs of an item or of the whole case: kept byte for byte, opened large, added by dropping. */
export function Photographs({ caseId, itemId, photographs }: { readonly caseId: string; readonly itemId: string | null; readonly photographs: readonly PhotographView[] }) {
  const [open, setOpen] = useState<PhotographView | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const add = useChange('photographs.add');
  const notes = useNotes();
  const take = async (files: FileList | null) => {
    if (!files) return;
    for (const { light, caption, ...picture } of await readPictures(files, (message, next) => { notes.complain({ message, next }); })) {
      add.mutate({ caseId, itemId, stoneId: null, caption, light, ...picture }, { onError: (e) => { notes.complain(e.failure); } });
    }
  };
  return (
    <div className="photographs" onDragOver={(e) => { e.preventDefault(); }} onDrop={(e) => { e.preventDefault(); void take(e.dataTransfer.files); }}>
      <input ref={picker} type="file" accept={PICTURE_KINDS.join()} multiple hidden onChange={(e) => { void take(e.target.files).then(() => { e.target.value = ''; }); }} />
      {photographs.length === 0 ? <Empty title="No photograph yet"><p>Drop PNG, JPEG or TIFF files here, or pick them.</p></Empty> : null}
      <ul className="photograph-grid">
        {photographs.map((p) => (
          <li key={p.id}>
            <button type="button" onClick={() => { setOpen(p); }} aria-label={`Open ${p.caption || p.name}`}><Thumbnail photograph={p} className="photograph-small" /></button>
            <p className="two-lines">{p.caption || p.name}</p>
            <p className="quiet one-line">{LIGHT_WORDS[p.light]} · <span className="mono" title={p.sha256}>{shortDigest(p.sha256)}</span></p>
          </li>
        ))}
      </ul>
      <div><Button isPending={add.isPending} onPress={() => picker.current?.click()}>Add photographs</Button></div>
      {open ? <PhotographSheet photograph={open} onClose={() => { setOpen(null); }} /> : null}
    </div>
  );
}
