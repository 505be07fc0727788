import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { useSavedPdf } from '../use-saved-pdf.ts';

/** Saves the chain of custody of a whole case, or of one item of it. */
export function PrintChain({ caseId, item }: { readonly caseId: string; readonly item: { readonly id: string; readonly label: string } | null }) {
  const chain = useSavedPdf('print.custody');
  const save = () => { if (!chain.isPending) chain.save({ caseId, itemId: item?.id ?? null }); };
  useKey('K', save);
  return <Button kind="quiet" keys="K" isPending={chain.isPending} onPress={save}>{item ? `Chain of custody of ${item.label}` : 'Chain of custody of the case'}</Button>;
}
