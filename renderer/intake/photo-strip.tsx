import { useEffect, useMemo, useRef } from 'react';
import { PICTURE_KINDS } from '../../app/custody/check-picture.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import type { Light, PhotoForm } from './intake-state.ts';
import './intake.css';

const LIGHTS: readonly { readonly value: Light; readonly label: string }[] = [
  { value: 'white', label: 'white light' }, { value: 'long-wave', label: 'long-wave ultraviolet' }, { value: 'short-wave', label: 'short-wave ultraviolet' }, { value: 'polarised', label: 'crossed polarisers' },
];

function Thumb({ photo }: { readonly photo: PhotoForm }) {
  const url = useMemo(() => URL.createObjectURL(new Blob([photo.bytes as BlobPart], { type: photo.mediaType })), [photo.bytes, photo.mediaType]);
  useEffect(() => () => { URL.revokeObjectURL(url); }, [url]);
  return <img src={url} alt={photo.caption || photo.name} className="photo-thumb" />;
}

/** PNG, JPEG and TIFF files as pictures of the form; anything else is named in a note. */
export async function readPictures(files: Iterable<File>, complain: (message: string, next: string) => void): Promise<Omit<PhotoForm, 'key'>[]> {
  const pictures: Omit<PhotoForm, 'key'>[] = [];
  for (const file of files) {
    const mediaType = PICTURE_KINDS.find((kind) => kind === file.type);
    if (mediaType === undefined) {
      complain(`${file.name} is not a PNG, JPEG or TIFF picture.`, 'Save it as one of the three and add it again; nothing of it was kept.');
      continue;
    }
    pictures.push({ name: file.name, mediaType, bytes: new Uint8Array(await file.arrayBuffer()), caption: '', light: 'white' });
  }
  return pictures;
}

/** Pictures of an item: dropped or picked, each with its words and the light it was taken in. */
export function PhotoStrip(p: {
  readonly photographs: readonly PhotoForm[]; readonly onAdd: (photographs: readonly Omit<PhotoForm, 'key'>[]) => void;
  readonly onChange: (at: number, value: Partial<PhotoForm>) => void; readonly onRemove: (at: number) => void;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const notes = useNotes();
  const take = async (files: FileList | null) => {
    if (!files) return;
    const pictures = await readPictures(files, (message, next) => { notes.complain({ message, next }); });
    if (pictures.length > 0) p.onAdd(pictures);
  };
  return (
    <div className="photo-strip" onDragOver={(e) => { e.preventDefault(); }} onDrop={(e) => { e.preventDefault(); void take(e.dataTransfer.files); }}>
      {p.photographs.map((photo, i) => (
        <div key={photo.key} className="photo-row">
          <Thumb photo={photo} />
          <Field label="Caption" hideLabel placeholder={photo.name} value={photo.caption} onChange={(caption) => { p.onChange(i, { caption }); }} className="grow" />
          <Choice<Light> label="Light" hideLabel value={photo.light} onChange={(light) => { p.onChange(i, { light }); }} options={LIGHTS} />
          <Button kind="quiet" aria-label={`Remove picture ${photo.name}`} onPress={() => { p.onRemove(i); }}>✕</Button>
        </div>
      ))}
      <input ref={picker} type="file" accept={PICTURE_KINDS.join()} multiple hidden onChange={(e) => { void take(e.target.files).then(() => { e.target.value = ''; }); }} />
      <Button kind="quiet" onPress={() => picker.current?.click()}>Add photographs, or drop them here</Button>
    </div>
  );
}
