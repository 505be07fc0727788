import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useLayoutEffect, useRef, type KeyboardEvent, type ReactNode } from 'react';
import './data-table.css';

export type Column<Row> = {
  readonly key: string;
  readonly head: string;
  /** CSS grid track: "120px", "minmax(160px, 2fr)". */
  readonly width: string;
  readonly align?: 'right';
  readonly mono?: boolean;
  readonly cell: (row: Row) => ReactNode;
  /** What the column is sorted by; a column without it does not sort. Where the list is sorted before it comes here, any value. */
  readonly sort?: ((row: Row) => string | number) | true;
};

export type Order<Key extends string = string> = { readonly key: Key; readonly down: boolean };

/** Up, down, and back to the order of the list. */
export const nextOrder = <Key extends string>(now: Order<Key> | null, key: Key): Order<Key> | null => (now?.key !== key ? { key, down: false } : now.down ? null : { key, down: true });

const ROW_PX = 33;
const HEAD_PADDING_PX = 8;

/** Hairline table of which only what is seen is drawn. The whole row is the target; arrows move, Enter opens. A row that is not there yet is drawn empty. */
export function TableView<Row>(p: {
  readonly label: string; readonly count: number; readonly rowAt: (index: number) => Row | undefined; readonly keyAt: (index: number) => string; readonly columns: readonly Column<Row>[];
  readonly order: Order | null; readonly onTurn: (key: string) => void; readonly onLook?: (first: number, last: number) => void;
  readonly onOpen?: ((row: Row) => void) | undefined; readonly selected?: string | null | undefined; readonly empty?: ReactNode; readonly rowHeight?: number | undefined;
}) {
  const { order, onLook } = p;
  const scroller = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLDivElement>(null);
  const virtual = useVirtualizer({ count: p.count, getScrollElement: () => scroller.current, estimateSize: () => p.rowHeight ?? ROW_PX, overscan: 12 });
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
  const drawn = virtual.getVirtualItems();
  const [first, last] = [drawn[0]?.index ?? 0, drawn.at(-1)?.index ?? 0];
  useEffect(() => { onLook?.(first, last); }, [onLook, first, last]);

  const focusRow = (index: number) => {
    virtual.scrollToIndex(index);
    requestAnimationFrame(() => { scroller.current?.querySelector<HTMLElement>(`[data-index="${index}"]`)?.focus(); });
  };
  const onKey = (event: KeyboardEvent, index: number) => {
    if (event.key === 'ArrowDown' && index < p.count - 1) { event.preventDefault(); focusRow(index + 1); }
    if (event.key === 'ArrowUp' && index > 0) { event.preventDefault(); focusRow(index - 1); }
    if (event.key === 'Home') { event.preventDefault(); focusRow(0); }
    if (event.key === 'End') { event.preventDefault(); focusRow(p.count - 1); }
    const row = p.rowAt(index);
    if (event.key === 'Enter' && row !== undefined) { event.preventDefault(); p.onOpen?.(row); }
  };

  return (
    <div className="table" role="table" aria-label={p.label} aria-rowcount={p.count + 1}>
      <div className="table-head" ref={head} role="row" style={{ gridTemplateColumns: tracks }}>
        {p.columns.map((c) => (
          <span key={c.key} role="columnheader" className={c.align === 'right' ? 'to-right' : ''} aria-sort={order?.key === c.key ? (order.down ? 'descending' : 'ascending') : 'none'}>
            {c.sort
              ? <button type="button" onClick={() => { p.onTurn(c.key); }}>{c.head}<span aria-hidden="true">{order?.key === c.key ? (order.down ? ' ↓' : ' ↑') : ''}</span></button>
              : c.head}
          </span>
        ))}
      </div>
      <div className="table-body" ref={scroller}>
        {p.count === 0 ? p.empty : (
          <div style={{ height: virtual.getTotalSize(), position: 'relative' }}>
            {drawn.filter((v) => v.index < p.count).map((v) => {
              const row = p.rowAt(v.index);
              const key = p.keyAt(v.index);
              return (
                <div key={key} ref={virtual.measureElement} data-index={v.index} role="row" aria-rowindex={v.index + 2} aria-busy={row === undefined ? true : undefined} tabIndex={v.index === 0 ? 0 : -1}
                  className={`table-row ${p.onOpen ? 'table-row-opens' : ''} ${p.selected === key ? 'table-row-selected' : ''}`}
                  style={{ gridTemplateColumns: tracks, transform: `translateY(${v.start}px)` }}
                  onClick={() => { if (row !== undefined) p.onOpen?.(row); }} onKeyDown={(e) => { onKey(e, v.index); }}>
                  {p.columns.map((c, i) => <span key={c.key} role="cell" className={`${c.align === 'right' ? 'to-right' : ''} ${c.mono ? 'mono' : ''}`}>{row === undefined ? (i === 0 ? '…' : '') : c.cell(row)}</span>)}
                </div>
              );
            })}
          </div>
        )}
      </div>
    </div>
  );
}
