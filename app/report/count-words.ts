const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** "one stone", "three stones", "40 stones". */
export const countWords = (count: number, one: string, many = `${one}s`): string => `${SMALL[count] ?? String(count)} ${count === 1 ? one : many}`;

/** First letter as a capital; the rest as it is. */
export function capitalise(text: string): string {
  const [first = '', ...rest] = Array.from(text);
  return first.toLocaleUpperCase('en') + rest.join('');
}

/** "a", "a and b", "a, b and c". */
export function listWords(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
