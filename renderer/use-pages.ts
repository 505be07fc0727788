import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import type { Input, OperationName, Output } from '../app/contract/index.ts';
import { askPatiently, type DoorFailure } from './queries.ts';

/** Operations that give a list page by page. */
type Paged = { [K in OperationName]: Output<K> extends { total: number; rows: readonly unknown[] } ? (Input<K> extends { limit?: number | undefined; offset?: number | undefined; sort?: unknown } ? K : never) : never }[OperationName];
type RowOf<K extends Paged> = Output<K>['rows'][number];

/** A list of which only what is looked at is there. */
export type Pages<Row> = {
  readonly total: number;
  readonly rowAt: (index: number) => Row | undefined;
  /** Rows that are looked at, the last included: they are asked for. */
  readonly look: (first: number, last: number) => void;
};

export const ROWS_A_PAGE = 200;
/** A table shows some dozens of rows: they lie on two pages. */
const MOST_PAGES = 4;

export type AskedPages<Row> = { readonly data: Pages<Row> | undefined; readonly error: DoorFailure | null; readonly isPending: boolean };

/** Reads a list through the door, page by page as it is looked at. What was shown stays until the first page of something else is there. */
export function usePages<K extends Paged>(name: K, input: Omit<Input<K>, 'limit' | 'offset'>): AskedPages<RowOf<K>> {
  const wanted = JSON.stringify(input);
  const [shown, setShown] = useState(wanted);
  const [range, setRange] = useState({ first: 0, last: 0 });
  const page = (of: string, at: number) => {
    const asked = { ...(JSON.parse(of) as object), limit: ROWS_A_PAGE, offset: at * ROWS_A_PAGE } as unknown as Input<K>;
    return { queryKey: [name, asked] as const, queryFn: () => askPatiently(name, asked) };
  };
  const head = useQuery<Output<K>, DoorFailure>({ ...page(wanted, 0), placeholderData: keepPreviousData });
  if (head.data !== undefined && !head.isPlaceholderData && shown !== wanted) setShown(wanted);
  const count = Math.min(range.last - range.first + 1, MOST_PAGES);
  const others = useQueries({ queries: Array.from({ length: count }, (_, i) => ({ ...page(shown, range.first + i), enabled: range.first + i > 0, placeholderData: undefined })) });
  const loaded = others.map((one) => one.data as Output<K> | undefined);
  const first = head.data as { total: number; rows: RowOf<K>[] } | undefined;
  const look = useCallback((from: number, to: number) => {
    const next = { first: Math.max(0, Math.floor(from / ROWS_A_PAGE)), last: Math.max(0, Math.floor(to / ROWS_A_PAGE)) };
    setRange((now) => (now.first === next.first && now.last === next.last ? now : next));
  }, []);
  const data = first === undefined ? undefined : {
    total: first.total, look,
    rowAt: (index: number): RowOf<K> | undefined => {
      const at = Math.floor(index / ROWS_A_PAGE);
      const rows = at === 0 ? first.rows : (loaded[at - range.first] as { rows: RowOf<K>[] } | undefined)?.rows;
      return rows?.[index % ROWS_A_PAGE];
    },
  };
  return { data, error: head.error, isPending: head.isPending };
}
