import { useEffect, useId, useRef, useState } from 'react';
import { Button } from '../look/button.tsx';

export type Logo = { readonly mediaType: 'image/png' | 'image/jpeg'; readonly bytes: Uint8Array };

const MOST_BYTES = 2 * 1024 * 1024;

/** The laboratory's sign for its papers: PNG or JPEG. */
export function LogoField({ logo, onChange }: { readonly logo: { mediaType: string; bytes: Uint8Array } | null; readonly onChange: (logo: Logo | null) => void }) {
  const id = useId();
  const picker = useRef<HTMLInputElement>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!logo) { setUrl(null); return undefined; }
    const made = URL.createObjectURL(new Blob([logo.bytes as BlobPart], { type: logo.mediaType }));
    setUrl(made);
    return () => { URL.revokeObjectURL(made); };
  }, [logo]);
  const take = async (file: File | undefined) => {
    if (!file) return;
    if (file.type !== 'image/png' && file.type !== 'image/jpeg') { setTrouble(`${file.name} is not a PNG or JPEG picture.`); return; }
    if (file.size > MOST_BYTES) { setTrouble(`${file.name} is larger than 2 MB; save a smaller picture.`); return; }
    setTrouble(null);
    onChange({ mediaType: file.type, bytes: new Uint8Array(await file.arrayBuffer()) });
  };
  return (
    <div className="choice">
      <label className="label" htmlFor={id}>Logo for the papers, PNG or JPEG</label>
      <div className="row gap8">
        {url ? <img src={url} alt="The laboratory’s logo" style={{ height: 28, maxWidth: 120, objectFit: 'contain' }} /> : null}
        <input ref={picker} id={id} type="file" accept="image/png,image/jpeg" hidden onChange={(e) => { void take(e.target.files?.[0]); e.target.value = ''; }} />
        <Button onPress={() => picker.current?.click()}>{logo ? 'Choose another' : 'Choose a picture'}</Button>
        {logo ? <Button kind="quiet" onPress={() => { onChange(null); }}>Remove</Button> : null}
      </div>
      {trouble ? <span className="field-error">{trouble}</span> : null}
    </div>
  );
}
