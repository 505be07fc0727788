/** Rows whose number is above `after` and not above `upTo`. */
export type Range = { readonly after: number; readonly upTo: number };

/** Lowest and highest row number of a table; null of an empty one. */
export type Bounds = { readonly low: number | null; readonly high: number | null };

/** Below and above any number a row can have, so that the ends of a table are open: a row numbered 0 or less is seen. */
const LOWEST = Number.MIN_SAFE_INTEGER;
const HIGHEST = Number.MAX_SAFE_INTEGER;

/** Rows that one thread checks before it takes the next piece: some ten milliseconds. */
const PIECE = 2_500;

/** More pieces than any laboratory has entries for: the numbers were then not given out by the program, and the table is one piece. */
const PIECES_AT_MOST = 20_000;

/** Cuts a table into pieces by its row numbers (`seq` is one), in their order. Always at least one, also of an empty table. */
export function rangesOf({ low, high }: Bounds, piece: number = PIECE): Range[] {
  if (low === null || high === null || high - low > PIECES_AT_MOST * piece) return [{ after: LOWEST, upTo: HIGHEST }];
  const borders: number[] = [];
  for (let border = low - 1 + piece; border < high; border += piece) borders.push(border);
  return [...borders, HIGHEST].map((upTo, i) => ({ after: i === 0 ? LOWEST : borders[i - 1]!, upTo }));
}
