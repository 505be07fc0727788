import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { sizeWords } from '../runs/incoming-file.ts';
import { useProgress } from '../start/use-progress.ts';

/** How far a long look at a file has come, with the way to stop it. `what`: what is being done, for a person. */
export function FileProgress({ what, done, total, note = '', onStop }: { readonly what: string; readonly done: number | null; readonly total: number; readonly note?: string; readonly onStop: () => void }) {
  useKey('Escape', onStop);
  return (
    <section className="file-progress" aria-label={what}>
      <p role="status">{what}</p>
      <progress aria-label={what} max={Math.max(1, total)} {...(done === null ? {} : { value: done })} />
      <div className="file-progress-foot">
        <span className="quiet one-line" title={note}>{done === null ? '' : `${sizeWords(done)} of ${sizeWords(total)}`}{note === '' ? '' : `, ${note}`}</span>
        <Button keys="Escape" onPress={onStop}>Stop</Button>
      </div>
    </section>
  );
}

/** The same of a file that the program has under this name and tells about. */
export function UploadProgress({ what, upload, onStop }: { readonly what: string; readonly upload: string; readonly onStop: () => void }) {
  const progress = useProgress(upload);
  return <FileProgress what={what} done={progress?.done ?? null} total={progress?.total ?? 1} note={progress?.note ?? ''} onStop={onStop} />;
}
