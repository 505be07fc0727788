import { useNotes } from '../look/notes.tsx';
import { Button } from '../look/button.tsx';
import { saveFile } from '../look/save-file.ts';
import { useChange } from '../queries.ts';

/** Saves the form that both hands sign for these entries of the ledger. */
export function PrintForm({ seqs, label = 'Print the form to sign' }: { readonly seqs: readonly number[]; readonly label?: string }) {
  const form = useChange('print.handOver');
  const notes = useNotes();
  const print = () => {
    form.mutate({ seqs: [...seqs] }, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); notes.say(`Saved ${p.name}`); }, onError: (e) => { notes.complain(e.failure); } });
  };
  return <Button isDisabled={form.isPending} onPress={print}>{label}</Button>;
}
