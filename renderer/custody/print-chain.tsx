import { Button } from '../look/button.tsx';
import { useSavedPdf } from '../use-saved-pdf.ts';

/** Saves the chain of custody of a whole case. */
export function PrintChain({ caseId }: { readonly caseId: string }) {
  const chain = useSavedPdf('print.custody');
  return <Button kind="quiet" isDisabled={chain.isPending} onPress={() => { chain.save({ caseId, itemId: null }); }}>Chain of custody</Button>;
}
