/** How the numbers of a data table are arranged. */
export type TableForm =
  | { readonly kind: 'even'; readonly x: string; readonly y: string }
  /** Groups of `arity` numbers of which the first two are x and y; `text` where groups carry words. */
  | { readonly kind: 'groups'; readonly symbols: string; readonly arity: number; readonly text: boolean };

/** The last bracket is left out by some writers; nothing else could be meant. */
const EVEN = /^\(\s*([A-Z]\w*)\s*\+\+\s*\(\s*([A-Z]\w*)\s*\.\.\s*\2\s*\)(?:\s*\))?/i;
const GROUPS = /^\(\s*([A-Z]\w*)\s*(?:\.\.\s*\1\s*)?\)/i;
const SEPARATE = /^\(\s*([A-Z](?:\s*,\s*[A-Z])+)\s*\)/i;

/**
 * The form at the head of a table, "(X++(Y..Y))", "(XY..XY)", "(XYW..XYW)" or "(XYA)", and what follows it on that line;
 * undefined where the words are none of these.
 */
export function parseTableForm(value: string): { form: TableForm; rest: string } | undefined {
  const even = EVEN.exec(value);
  if (even) return { form: { kind: 'even', x: even[1]!.toUpperCase(), y: even[2]!.toUpperCase() }, rest: dataAfter(value.slice(even[0].length)) };
  const groups = GROUPS.exec(value) ?? SEPARATE.exec(value);
  if (!groups) return undefined;
  const symbols = groups[1]!.replace(/[\s,]/g, '').toUpperCase();
  // A: assignment, M: multiplicity. Both may be words.
  const text = /[AM]/.test(symbols.slice(2));
  return { form: { kind: 'groups', symbols, arity: symbols.length, text }, rest: dataAfter(value.slice(groups[0].length)) };
}

/** Data that begin on the label's own line; words ("XYDATA", "PROFILE") are not data. */
function dataAfter(rest: string): string {
  return /^[\s,;]*[+-]?[\d.]/.test(rest) ? rest.replace(/^[\s,;]+/, '') : '';
}
