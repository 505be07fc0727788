import { Button } from '../../look/button.tsx';
import { Dialog } from '../../look/dialog.tsx';
import { Trouble } from '../../look/empty.tsx';
import { useChange } from '../../queries.ts';
import { go } from '../../router.ts';

/** Throws a draft away; no record was made of it. */
export function DiscardSheet({ draftId, onClose }: { readonly draftId: string; readonly onClose: () => void }) {
  const discard = useChange('reportDrafts.discard');
  return (
    <Dialog title="Discard this draft?" role="alertdialog" width={420} onClose={onClose}
      footer={<><Button autoFocus onPress={onClose}>Keep it</Button><Button kind="danger" isPending={discard.isPending} onPress={() => { discard.mutate({ draftId }, { onSuccess: () => { go({ view: 'reports' }); } }); }}>Discard it</Button></>}>
      <p>What was chosen and written for it is gone. The records of the case stay as they are, and no number is used up.</p>
      {discard.error ? <Trouble {...discard.error.failure} /> : null}
    </Dialog>
  );
}
