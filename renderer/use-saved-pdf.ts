import type { Input } from '../app/contract/index.ts';
import { saveFile } from './look/save-file.ts';
import { useNotes } from './look/notes.tsx';
import { useChange } from './queries.ts';

/** Operations that answer with pages to save. */
type Printing = 'print.receipt' | 'print.labels' | 'print.custody' | 'print.handOver' | 'reports.preview';

/** Has pages drawn, saves them as a PDF and says so; what goes wrong is told in a note. */
export function useSavedPdf<K extends Printing>(operation: K) {
  const drawn = useChange(operation);
  const notes = useNotes();
  const save = (input: Input<K>) => {
    drawn.mutate(input, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); notes.say(`Saved ${p.name}`); }, onError: (e) => { notes.complain(e.failure); } });
  };
  return { save, isPending: drawn.isPending };
}
