/** Letter of the n-th item of a case, counted from 0: A … Z, AA, AB … Throws on a number that is not an index. */
export function itemLabel(index: number): string {
  if (!Number.isSafeInteger(index) || index < 0) throw new RangeError(`itemLabel: ${index} is not an index`);
  let label = '';
  for (let rest = index; rest >= 0; rest = Math.floor(rest / 26) - 1) label = String.fromCharCode(65 + (rest % 26)) + label;
  return label;
}

/** Label of a stone of an item, counted from 1: … */
export const stoneLabel = (item: string, ordinal: number): string => `${item}-${ordinal}`;
