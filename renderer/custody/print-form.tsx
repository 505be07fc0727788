import { Button } from '../look/button.tsx';
import { useSavedPdf } from '../use-saved-pdf.ts';

/** Saves the form that both hands sign for these entries of the ledger. */
export function PrintForm({ seqs, label = 'Print the form to sign' }: { readonly seqs: readonly number[]; readonly label?: string }) {
  const form = useSavedPdf('print.handOver');
  return <Button isPending={form.isPending} onPress={() => { form.save({ seqs: [...seqs] }); }}>{label}</Button>;
}
