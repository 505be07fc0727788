import type { Output } from '../../app/contract/index.ts';
import { Button } from '../look/button.tsx';
import { Mark } from '../look/mark.tsx';
import { useNotes } from '../look/notes.tsx';
import { showMoment } from '../look/time.ts';
import { useChange } from '../queries.ts';
import './start.css';

/** The casebook exists and can't be used: says why, and offers the kept copies. Never deletes anything. */
export function Unusable({ trouble, file }: { readonly trouble: NonNullable<Output<'casebook.status'>['trouble']>; readonly file: string }) {
  const restore = useChange('casebook.restore');
  const notes = useNotes();
  return (
    <main className="start">
      <header className="start-head">
        <p className="start-brand"><Mark size={26} />Culet</p>
        <h1>The casebook can’t be opened</h1>
        <p className="warn">{trouble.message}</p>
        <p className="second">{trouble.next}</p>
        <p className="quiet mono start-file">{file}</p>
      </header>
      <section className="section">
        <h2>Kept copies</h2>
        {trouble.backups.length === 0 ? <p className="second">No kept copy was found beside the casebook. Look in your own backups for the file named above.</p> : (
          <ul className="rows">
            {trouble.backups.map((b) => (
              <li key={b.file} className="row gap16">
                <span className="mono">{showMoment(b.at, Intl.DateTimeFormat().resolvedOptions().timeZone)}</span>
                <span className="quiet mono one-line grow">{b.file}</span>
                <Button onPress={() => { restore.mutate({ file: b.file }, { onError: (e) => { notes.complain(e.failure); } }); }}>Use this copy</Button>
              </li>
            ))}
          </ul>
        )}
        <p className="quiet">The present file is set aside, not deleted, before a copy takes its place.</p>
      </section>
    </main>
  );
}
