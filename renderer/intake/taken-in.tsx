import { Button } from '../look/button.tsx';
import { useKey } from '../keys/keymap.ts';
import { go } from '../router.ts';
import { useSavedPdf } from '../use-saved-pdf.ts';
import { View } from '../shell/view.tsx';

/** The case exists: its number, its papers, and the way on. */
export function TakenIn({ taken, onAnother }: { readonly taken: { readonly caseId: string; readonly number: string }; readonly onAnother: () => void }) {
  const receipt = useSavedPdf('print.receipt');
  const labels = useSavedPdf('print.labels');
  const papers = { caseId: taken.caseId };
  useKey('R', () => { receipt.save(papers); });
  useKey('L', () => { labels.save(papers); });
  useKey('N', onAnother);
  useKey('Enter', () => { go({ view: 'case', id: taken.caseId }); });
  return (
    <View over="Taken in" title={<span className="mono taken-number">{taken.number}</span>}>
      <div className="page page-sheet">
        <p className="second">Every item has its first entry in the custody ledger. Print the receipt for the client and the labels for the packets.</p>
        <div className="row gap8">
          <Button keys="R" isPending={receipt.isPending} onPress={() => { receipt.save(papers); }}>Receipt, PDF</Button>
          <Button keys="L" isPending={labels.isPending} onPress={() => { labels.save(papers); }}>Labels, PDF</Button>
          <Button kind="main" keys="Enter" autoFocus onPress={() => { go({ view: 'case', id: taken.caseId }); }}>Open the case</Button>
          <Button kind="quiet" keys="N" onPress={onAnother}>Take in another</Button>
        </div>
      </div>
    </View>
  );
}
