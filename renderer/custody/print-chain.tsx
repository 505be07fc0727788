import { Button } from '../look/button.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { useChange } from '../queries.ts';

/** Saves the chain of custody of a whole case. */
export function PrintChain({ caseId }: { readonly caseId: string }) {
  const custody = useChange('print.custody');
  const notes = useNotes();
  const print = () => {
    custody.mutate({ caseId, itemId: null }, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); notes.say(`Saved ${p.name}`); }, onError: (e) => { notes.complain(e.failure); } });
  };
  return <Button kind="quiet" isDisabled={custody.isPending} onPress={print}>Chain of custody</Button>;
}
