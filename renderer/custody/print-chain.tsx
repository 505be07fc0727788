import { Button } from '../look/button.tsx';
import { useSavedPdf } from '../use-saved-pdf.ts';

/** Saves the chain of custody of a whole case, or of one item of it. */
export function PrintChain({ caseId, item }: { readonly caseId: string; readonly item: { readonly id: string; readonly label: string } | null }) {
  const chain = useSavedPdf('print.custody');
  return <Button kind="quiet" isPending={chain.isPending} onPress={() => { chain.save({ caseId, itemId: item?.id ?? null }); }}>{item ? `Chain of custody of ${item.label}` : 'Chain of custody of the case'}</Button>;
}
