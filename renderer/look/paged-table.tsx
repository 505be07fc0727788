import type { ReactNode } from 'react';
import type { Pages } from '../use-pages.ts';
import { nextOrder, TableView, type Column, type Order } from './table-view.tsx';

/** A table of a list that is read page by page, as it is looked at, and sorted where the records are: it holds 100,000 rows and more. */
export function PagedTable<Row, Key extends string>(p: {
  readonly label: string; readonly pages: Pages<Row>; readonly columns: readonly (Column<Row> & { readonly key: Key | (string & {}) })[];
  readonly order: Order<Key> | null; readonly onOrder: (order: Order<Key> | null) => void;
  readonly onOpen?: (row: Row) => void; readonly empty?: ReactNode; readonly rowHeight?: number;
}) {
  // A row is its place: what stands in it comes later, and the focus stays.
  return (
    <TableView label={p.label} count={p.pages.total} rowAt={p.pages.rowAt} keyAt={String} columns={p.columns} order={p.order} onTurn={(key) => { p.onOrder(nextOrder(p.order, key as Key)); }}
      onLook={p.pages.look} onOpen={p.onOpen} empty={p.empty} rowHeight={p.rowHeight} />
  );
}
