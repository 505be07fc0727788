import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { Failure } from '../../app/contract/failure.ts';
import { Button } from './button.tsx';
import './states.css';

type Note = { readonly id: number; readonly text: string; readonly next?: string; readonly bad: boolean; readonly undo?: () => void };
type Notes = { say(text: string, undo?: () => void): void; complain(failure: Pick<Failure, 'message' | 'next'>): void };

const Context = createContext<Notes>({ say: () => undefined, complain: () => undefined });
/** Short messages at the corner: what was done (with a way back where there is one), or what went wrong and what to do. */
export const useNotes = () => useContext(Context);

const SHOWN_MS = 6000;
const MOST_PLAIN = 3;

export function NotesHost({ children }: { readonly children: ReactNode }) {
  const [notes, setNotes] = useState<readonly Note[]>([]);
  const last = useRef(0);
  const remove = useCallback((id: number) => { setNotes((now) => now.filter((n) => n.id !== id)); }, []);
  const add = useCallback((note: Omit<Note, 'id'>) => {
    const id = ++last.current;
    // What went wrong stays until it is read; of the rest only the newest few.
    setNotes((now) => [...now.filter((n, i) => n.bad || i >= now.length - MOST_PLAIN), { ...note, id }]);
    if (!note.bad) setTimeout(() => { remove(id); }, SHOWN_MS);
  }, [remove]);
  useEffect(() => {
    // What went wrong was said of the place it happened at: over another one it would be taken for something said of that.
    const left = () => { setNotes((now) => now.filter((n) => !n.bad)); };
    window.addEventListener('hashchange', left);
    return () => { window.removeEventListener('hashchange', left); };
  }, []);
  const value = useMemo<Notes>(() => ({
    say: (text, undo) => { add({ text, bad: false, undo }); },
    complain: (f) => { add({ text: f.message, next: f.next, bad: true }); },
  }), [add]);
  return (
    <Context.Provider value={value}>
      {children}
      {/* Notes stay readable over a sheet: what lies outside one is otherwise hidden from readers. */}
      <div className="notes" role="status" aria-live="polite" data-react-aria-top-layer="true">
        {notes.map((n) => (
          <div key={n.id} className={`note ${n.bad ? 'note-bad' : ''}`}>
            <div><p>{n.text}</p>{n.next ? <p className="second">{n.next}</p> : null}</div>
            <span className="row gap4">
              {n.undo ? <Button kind="quiet" onPress={() => { n.undo?.(); remove(n.id); }}>Undo</Button> : null}
              <Button kind="quiet" aria-label="Dismiss" onPress={() => { remove(n.id); }}>✕</Button>
            </span>
          </div>
        ))}
      </div>
    </Context.Provider>
  );
}
