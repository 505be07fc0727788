import { useMemo, useState, type ReactNode } from 'react';
import { nextOrder, TableView, type Column, type Order } from './table-view.tsx';

export type { Column } from './table-view.tsx';

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
const compare = (a: string | number, b: string | number) => (typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b)));

function sorted<Row>(rows: readonly Row[], columns: readonly Column<Row>[], order: Order | null): readonly Row[] {
  const by = order && columns.find((c) => c.key === order.key)?.sort;
  if (!order || !by || by === true) return rows;
  const keyed = rows.map((row) => ({ row, key: by(row) }));
  keyed.sort((a, b) => (order.down ? compare(b.key, a.key) : compare(a.key, b.key)));
  return keyed.map((k) => k.row);
}

/** A table of rows that are all there; it sorts them itself. Long lists of the casebook are read page by page: `PagedTable`. */
export function DataTable<Row>(p: {
  readonly label: string; readonly rows: readonly Row[]; readonly columns: readonly Column<Row>[]; readonly rowKey: (row: Row) => string;
  readonly onOpen?: (row: Row) => void; readonly selected?: string | null; readonly empty?: ReactNode; readonly firstOrder?: Order;
  readonly rowHeight?: number;
}) {
  const [order, setOrder] = useState<Order | null>(p.firstOrder ?? null);
  const rows = useMemo(() => sorted(p.rows, p.columns, order), [p.rows, p.columns, order]);
  return (
    <TableView label={p.label} count={rows.length} rowAt={(index) => rows[index]} keyAt={(index) => p.rowKey(rows[index] as Row)} columns={p.columns} order={order} onTurn={(key) => { setOrder((now) => nextOrder(now, key)); }}
      onOpen={p.onOpen} selected={p.selected} empty={p.empty} rowHeight={p.rowHeight} />
  );
}
