import { Button } from '../look/button.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { useKey } from '../keys/keymap.ts';
import { useChange } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';

/** The case exists: its number, its papers, and the way on. */
export function TakenIn({ taken, onAnother }: { readonly taken: { readonly caseId: string; readonly number: string }; readonly onAnother: () => void }) {
  const receipt = useChange('print.receipt');
  const labels = useChange('print.labels');
  const notes = useNotes();
  const save = (which: typeof receipt | typeof labels) => {
    which.mutate({ caseId: taken.caseId }, { onSuccess: (p) => { saveFile(p.name, 'application/pdf', p.pdf); notes.say(`Saved ${p.name}`); }, onError: (e) => { notes.complain(e.failure); } });
  };
  useKey('R', () => { save(receipt); });
  useKey('L', () => { save(labels); });
  useKey('Enter', () => { go({ view: 'case', id: taken.caseId }); });
  return (
    <View over="Taken in" title={<span className="mono taken-number">{taken.number}</span>}>
      <div className="page page-sheet">
        <p className="second">Every item has its first entry in the custody ledger. Print the receipt for the client and the labels for the packets.</p>
        <div className="row gap8">
          <Button keys="R" isDisabled={receipt.isPending} onPress={() => { save(receipt); }}>Receipt, PDF</Button>
          <Button keys="L" isDisabled={labels.isPending} onPress={() => { save(labels); }}>Labels, PDF</Button>
          <Button kind="main" keys="Enter" onPress={() => { go({ view: 'case', id: taken.caseId }); }}>Open the case</Button>
          <Button kind="quiet" onPress={onAnother}>Take in another</Button>
        </div>
      </div>
    </View>
  );
}
