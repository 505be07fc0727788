import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useLayoutEffect, useMemo, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import './data-table.css';

export type Column<Row> = {
  readonly key: string;
  readonly head: string;
  /** CSS grid track: "120px", "minmax(160px, 2fr)". */
  readonly width: string;
  readonly align?: 'right';
  readonly mono?: boolean;
  readonly cell: (row: Row) => ReactNode;
  /** What the column is sorted by; a column without it does not sort. */
  readonly sort?: (row: Row) => string | number;
};

type Order = { readonly key: string; readonly down: boolean };

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
const compare = (a: string | number, b: string | number) => (typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b)));

function sorted<Row>(rows: readonly Row[], columns: readonly Column<Row>[], order: Order | null): readonly Row[] {
  const by = order && columns.find((c) => c.key === order.key)?.sort;
  if (!order || !by) return rows;
  const keyed = rows.map((row) => ({ row, key: by(row) }));
  keyed.sort((a, b) => (order.down ? compare(b.key, a.key) : compare(a.key, b.key)));
  return keyed.map((k) => k.row);
}

const ROW_PX = 33;
const HEAD_PADDING_PX = 8;

/** Hairline table that holds 100,000 rows: only what is seen is drawn. The whole row is the target; arrows move, Enter opens. */
export function DataTable<Row>(p: {
  readonly label: string; readonly rows: readonly Row[]; readonly columns: readonly Column<Row>[]; readonly rowKey: (row: Row) => string;
  readonly onOpen?: (row: Row) => void; readonly selected?: string | null; readonly empty?: ReactNode; readonly firstOrder?: Order;
  readonly rowHeight?: number;
}) {
  const [order, setOrder] = useState<Order | null>(p.firstOrder ?? null);
  const scroller = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLDivElement>(null);
  const rows = useMemo(() => sorted(p.rows, p.columns, order), [p.rows, p.columns, order]);
  const virtual = useVirtualizer({ count: rows.length, getScrollElement: () => scroller.current, estimateSize: () => p.rowHeight ?? ROW_PX, overscan: 12 });
  const tracks = p.columns.map((c) => c.width).join(' ');
  // A scrollbar takes its width from the rows alone; the head gives up as much, so that its words stay over their columns.
  const makeRoom = () => {
    if (head.current && scroller.current) head.current.style.paddingRight = `${HEAD_PADDING_PX + scroller.current.offsetWidth - scroller.current.clientWidth}px`;
  };
  useLayoutEffect(makeRoom);
  // One comes and goes with the height of the window, too, without a row being drawn anew.
  useEffect(() => {
    if (!scroller.current) return undefined;
    const watch = new ResizeObserver(makeRoom);
    watch.observe(scroller.current);
    return () => { watch.disconnect(); };
  }, []);

  const turn = (key: string) => { setOrder((now) => (now?.key !== key ? { key, down: false } : now.down ? null : { key, down: true })); };
  const focusRow = (index: number) => {
    virtual.scrollToIndex(index);
    requestAnimationFrame(() => { scroller.current?.querySelector<HTMLElement>(`[data-index="${index}"]`)?.focus(); });
  };
  const onKey = (event: KeyboardEvent, index: number) => {
    if (event.key === 'ArrowDown' && index < rows.length - 1) { event.preventDefault(); focusRow(index + 1); }
    if (event.key === 'ArrowUp' && index > 0) { event.preventDefault(); focusRow(index - 1); }
    if (event.key === 'Home') { event.preventDefault(); focusRow(0); }
    if (event.key === 'End') { event.preventDefault(); focusRow(rows.length - 1); }
    const row = rows[index];
    if (event.key === 'Enter' && row !== undefined) { event.preventDefault(); p.onOpen?.(row); }
  };

  return (
    <div className="table" role="table" aria-label={p.label} aria-rowcount={rows.length + 1}>
      <div className="table-head" ref={head} role="row" style={{ gridTemplateColumns: tracks }}>
        {p.columns.map((c) => (
          <span key={c.key} role="columnheader" className={c.align === 'right' ? 'to-right' : ''} aria-sort={order?.key === c.key ? (order.down ? 'descending' : 'ascending') : 'none'}>
            {c.sort
              ? <button type="button" onClick={() => { turn(c.key); }}>{c.head}<span aria-hidden="true">{order?.key === c.key ? (order.down ? ' ↓' : ' ↑') : ''}</span></button>
              : c.head}
          </span>
        ))}
      </div>
      <div className="table-body" ref={scroller}>
        {rows.length === 0 ? p.empty : (
          <div style={{ height: virtual.getTotalSize(), position: 'relative' }}>
            {virtual.getVirtualItems().map((v) => {
              const row = rows[v.index] as Row;
              const key = p.rowKey(row);
              return (
                <div key={key} ref={virtual.measureElement} data-index={v.index} role="row" aria-rowindex={v.index + 2} tabIndex={v.index === 0 ? 0 : -1}
                  className={`table-row ${p.onOpen ? 'table-row-opens' : ''} ${p.selected === key ? 'table-row-selected' : ''}`}
                  style={{ gridTemplateColumns: tracks, transform: `translateY(${v.start}px)` }}
                  onClick={() => { p.onOpen?.(row); }} onKeyDown={(e) => { onKey(e, v.index); }}>
                  {p.columns.map((c) => <span key={c.key} role="cell" className={`${c.align === 'right' ? 'to-right' : ''} ${c.mono ? 'mono' : ''}`}>{c.cell(row)}</span>)}
                </div>
              );
            })}
          </div>
        )}
      </div>
    </div>
  );
}
