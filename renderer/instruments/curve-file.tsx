import { useRef, useState } from 'react';
import { Button } from '../look/button.tsx';
import { gatherFiles, type IncomingFile } from '../runs/incoming-file.ts';
import { useFileDrop } from '../runs/use-file-drop.ts';

/** The one file of a calibration: dropped anywhere on the sheet, or picked. `what` ends "Drop the file with …". */
export function CurveFile({ what, file, onFile }: { readonly what: string; readonly file: IncomingFile | null; readonly onFile: (file: IncomingFile) => void }) {
  const [refused, setRefused] = useState<readonly string[]>([]);
  const picker = useRef<HTMLInputElement>(null);
  const take = (files: readonly File[]) => {
    void gatherFiles(files.slice(0, 1)).then((gathered) => { setRefused(gathered.refused); if (gathered.files[0]) onFile(gathered.files[0]); });
  };
  const over = useFileDrop(take);
  return (
    <>
      <div className={`calibration-drop ${over ? 'calibration-drop-over' : ''}`}>
        <p className="grow two-lines">{over ? 'Let go: nothing is kept yet.' : file ? file.name : `Drop the file with ${what} anywhere on this sheet, or`}</p>
        <Button onPress={() => { picker.current?.click(); }}>{file ? 'Pick another file' : 'Pick the file'}</Button>
        <input ref={picker} type="file" className="hide" tabIndex={-1} aria-label={`File of ${what}`} onChange={(e) => { take([...e.target.files ?? []]); e.target.value = ''; }} />
      </div>
      {refused.map((sentence) => <p key={sentence} className="warn">{sentence}</p>)}
    </>
  );
}
