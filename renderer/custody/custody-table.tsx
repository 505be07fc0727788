import type { CustodyView } from '../../app/contract/custody.ts';
import { useHouse } from '../house/house-context.tsx';
import { custodyWords } from '../../app/report/custody-words.ts';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { shortDigest, showMoment } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { changesHands } from './custody-actions.ts';
import { PrintForm } from './print-form.tsx';

/** Every hand an item, or all items of a case, passed through; a weight that differs stands out. */
export function CustodyTable({ caseId, itemId }: { readonly caseId: string; readonly itemId: string | null }) {
  const { laboratory } = useHouse();
  const entries = useAsk('custody.list', { caseId, itemId, limit: 1000 }, { keep: true });
  const columns: readonly Column<CustodyView>[] = [
    { key: 'at', head: 'When', width: '150px', mono: true, cell: (r) => showMoment(r.at, laboratory.zone), sort: (r) => r.seq },
    ...(itemId === null ? [{ key: 'item', head: 'Item', width: '44px', mono: true, cell: (r: CustodyView) => r.itemLabel, sort: (r: CustodyView) => r.itemLabel }] : []),
    { key: 'what', head: 'What', width: 'minmax(110px, 3fr)', cell: (r) => <span className={r.content.differs ? 'warn' : ''} title={custodyWords(r.content)}>{custodyWords(r.content)}</span> },
    { key: 'who', head: 'Written by', width: 'minmax(90px, 1fr)', cell: (r) => <span title={r.person}>{r.person}</span> },
    { key: 'form', head: '', width: '64px', align: 'right', cell: (r) => (changesHands(r.content.event) ? <PrintForm seqs={[r.seq]} label="Form" /> : null) },
    { key: 'hash', head: 'Hash', width: '84px', mono: true, cell: (r) => <span title={r.hash}>{shortDigest(r.hash)}</span> },
  ];
  if (entries.isError) return <Trouble {...entries.error.failure} />;
  if (entries.isPending) return <Working what="Reading the custody ledger" />;
  return <div className="case-table"><DataTable label="Custody" rows={entries.data.rows} columns={columns} rowKey={(r) => String(r.seq)} /></div>;
}
