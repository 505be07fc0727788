import { useEffect, useRef, useState } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import { useHouse } from '../house/house-context.tsx';
import { readPictures } from '../intake/photo-strip.tsx';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Empty } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { shortDigest, showMoment } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import './cases.css';

function Picture({ photograph, className }: { readonly photograph: PhotographView; readonly className: string }) {
  const content = useAsk('photographs.content', { photographId: photograph.id });
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!content.data) return undefined;
    const made = URL.createObjectURL(new Blob([content.data.bytes as BlobPart], { type: content.data.mediaType }));
    setUrl(made);
    return () => { URL.revokeObjectURL(made); };
  }, [content.data]);
  if (content.isError) return <span className="warn">{content.error.failure.message}</span>;
  return url ? <img src={url} alt={photograph.caption || photograph.name} className={className} /> : <span className={className} />;
}

/** Photographs of an item or of the whole case: kept byte for byte, opened large, added by dropping. */
export function Photographs({ caseId, itemId, photographs }: { readonly caseId: string; readonly itemId: string | null; readonly photographs: readonly PhotographView[] }) {
  const { laboratory } = useHouse();
  const [open, setOpen] = useState<PhotographView | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const add = useChange('photographs.add');
  const content = useChange('photographs.content');
  const notes = useNotes();
  const take = async (files: FileList | null) => {
    if (!files) return;
    for (const { light, caption, ...picture } of await readPictures(files, (message, next) => { notes.complain({ message, next }); })) {
      add.mutate({ caseId, itemId, stoneId: null, caption, light, ...picture }, { onError: (e) => { notes.complain(e.failure); } });
    }
  };
  return (
    <div className="photographs" onDragOver={(e) => { e.preventDefault(); }} onDrop={(e) => { e.preventDefault(); void take(e.dataTransfer.files); }}>
      <input ref={picker} type="file" accept="image/png,image/jpeg" multiple hidden onChange={(e) => { void take(e.target.files).then(() => { e.target.value = ''; }); }} />
      {photographs.length === 0 ? <Empty title="No photograph yet"><p>Drop PNG or JPEG files here, or pick them.</p></Empty> : null}
      <ul className="photograph-grid">
        {photographs.map((p) => (
          <li key={p.id}>
            <button type="button" onClick={() => { setOpen(p); }} aria-label={`Open ${p.caption || p.name}`}><Picture photograph={p} className="photograph-small" /></button>
            <p className="two-lines">{p.caption || p.name}</p>
            <p className="quiet one-line">{p.light} · <span className="mono" title={p.sha256}>{shortDigest(p.sha256)}</span></p>
          </li>
        ))}
      </ul>
      <div><Button isDisabled={add.isPending} onPress={() => picker.current?.click()}>Add photographs</Button></div>
      {open ? (
        <Dialog title={open.caption || open.name} width={1000} onClose={() => { setOpen(null); }} footer={(
          <>
            <span className="quiet grow">{open.light} · {showMoment(open.at, laboratory.zone)} · {open.size.toLocaleString('en')} bytes · <span className="mono">{shortDigest(open.sha256)}</span></span>
            <Button onPress={() => { content.mutate({ photographId: open.id }, { onSuccess: (f) => { saveFile(f.name, f.mediaType, f.bytes); }, onError: (e) => { notes.complain(e.failure); } }); }}>Save as it came</Button>
          </>
        )}><Picture photograph={open} className="photograph-large" /></Dialog>
      ) : null}
    </div>
  );
}
