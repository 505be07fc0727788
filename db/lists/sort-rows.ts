import { aTurn } from '../a-turn.ts';

export type SortKey = string | number;

/** Values sorted or merged between two turns of others: some milliseconds of a collator. */
const SLICE = 1000;
const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
const compare = (a: SortKey, b: SortKey): number => (typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b)));

async function merged(left: readonly SortKey[], right: readonly SortKey[]): Promise<SortKey[]> {
  const all: SortKey[] = [];
  let [i, j] = [0, 0];
  while (i < left.length && j < right.length) {
    all.push(compare(left[i]!, right[j]!) <= 0 ? left[i++]! : right[j++]!);
    if (all.length % SLICE === 0) await aTurn();
  }
  return all.concat(left.slice(i), right.slice(j));
}

/** Sorted by the collator without holding the thread: runs, merged two by two. */
async function sortedValues(values: readonly SortKey[]): Promise<SortKey[]> {
  let runs: SortKey[][] = [];
  for (let from = 0; from < values.length; from += SLICE) {
    runs.push(values.slice(from, from + SLICE).sort(compare));
    await aTurn();
  }
  while (runs.length > 1) {
    const next: SortKey[][] = [];
    for (let i = 0; i < runs.length; i += 2) next.push(runs[i + 1] === undefined ? runs[i]! : await merged(runs[i]!, runs[i + 1]!));
    runs = next;
  }
  return runs[0] ?? [];
}

/** Places of rows in the order of one key each; those that compare equal stay as they stand. */
async function sortedOnce(places: readonly number[], keyAt: (place: number) => SortKey, down: boolean): Promise<number[]> {
  const distinct = await sortedValues([...new Set(places.map(keyAt))]);
  await aTurn();
  const ranks = new Map<SortKey, number>();
  let rank = -1;
  distinct.forEach((value, i) => {
    if (i === 0 || compare(distinct[i - 1]!, value) !== 0) rank += 1;
    ranks.set(value, rank);
  });
  const piles: number[][] = Array.from({ length: rank + 1 }, () => []);
  await aTurn();
  for (const place of places) piles[ranks.get(keyAt(place))!]!.push(place);
  return (down ? piles.reverse() : piles).flat();
}

/** Row numbers in the order of their keys, as a person reads words and numbers. A key of several parts is sorted by its first, then by its second. */
export async function sortRows(rows: readonly number[], keys: readonly (readonly SortKey[])[], down: boolean): Promise<number[]> {
  let places = rows.map((_, place) => place);
  // From the last part to the first, each leaving equal ones as they are.
  for (let part = (keys[0]?.length ?? 0) - 1; part >= 0; part -= 1) places = await sortedOnce(places, (place) => keys[place]![part]!, down);
  return places.map((place) => rows[place]!);
}
