import type { ReadWarning } from './spectrum-file.ts';
import { xUnitFromWords } from './unit-words.ts';

/** Which columns make which curve. */
export type Curve = { readonly x: number; readonly y: number };
export type ColumnChoice = { readonly curves: readonly Curve[]; readonly warnings: readonly ReadWarning[] };

type Role = 'x' | 'pixel' | 'y' | 'raw' | 'spread';

const SPREAD = /^\W*(?:sd|std|st\.?\s*dev|sigma|err(?:or)?s?|uncertaint(?:y|ies)|variance|rms)\b|[_\s](?:err|error|std|sd)$/i;
/** What a measurement consists of before it is worked out; without one of PARTNERS these are curves of their own. */
const RAW = /^\W*(?:sample|dark|ref(?:erence)?|back\s*ground|bkg|baseline|blank|white|raw|lamp)\b/i;
const PARTNER = /^\W*(?:dark|ref(?:erence)?|back\s*ground|bkg|baseline|blank|white)\b/i;
/** Tables that carry the measurement beside what was made of it: the measurement is the curve. */
const AS_READ = /\bas read\b/i;
const ORDINATE = /absorp|coef|absorb|intens|count|transm|reflec|signal|fluor|lumin|emission/i;

function roleOf(name: string, column: Float64Array): Role {
  if (name === '') return isCounter(column) ? 'pixel' : 'y';
  if (SPREAD.test(name)) return 'spread';
  if (RAW.test(name)) return 'raw';
  if (ORDINATE.test(name)) return 'y';
  const unit = xUnitFromWords(name);
  if (unit === 'pixel') return 'pixel';
  return (unit !== undefined && unit !== 'other') || /^\W*(?:wave|wl|lambda|\u03bb|energy|x[\s_]?\d*\b(?!\w)|raman\s*shift)/i.test(name) ? 'x' : 'y';
}

/** 0, 1, 2, … or 1, 2, 3, … */
export function isCounter(column: Float64Array): boolean {
  const first = column[0]!;
  return (first === 0 || first === 1) && column.every((v, i) => v === first + i);
}

function isMonotonic(column: Float64Array): boolean {
  const direction = Math.sign(column[1]! - column[0]!);
  return direction !== 0 && column.every((v, i) => i === 0 || Math.sign(v - column[i - 1]!) === direction);
}

const sameColumn = (a: Float64Array, b: Float64Array): boolean => a.every((v, i) => v === b[i]);
/** x y x y …: every other column runs one way over much the same range, and none of those between does. */
function arePairs(columns: readonly Float64Array[]): boolean {
  const [first] = columns;
  const span = (c: Float64Array): readonly [number, number] => [Math.min(c[0]!, c[c.length - 1]!), Math.max(c[0]!, c[c.length - 1]!)];
  const [from, to] = span(first!);
  return columns.every((c, i) => {
    if (i % 2 === 1) return !isMonotonic(c);
    const [lo, hi] = span(c);
    return isMonotonic(c) && Math.min(hi, to) - Math.max(lo, from) > 0.5 * Math.max(hi - lo, to - from);
  });
}

const label = (names: readonly string[] | undefined, c: number): string => (names?.[c] ? `“${names[c]}”` : `column ${c + 1}`);

function withoutNames(columns: readonly Float64Array[]): ColumnChoice {
  const ordinates = (x: number, from: number): Curve[] => columns.slice(from).map((_, i) => ({ x, y: from + i }));
  const [first, second] = columns;
  if (columns.length > 2 && isCounter(first!) && isMonotonic(second!) && !isCounter(second!)) {
    const warning = { code: 'index-column', message: 'The first column only counts the points; the second was taken as the abscissa.' };
    return { curves: ordinates(1, 2), warnings: [warning] };
  }
  if (columns.length > 2 && first!.every((v) => v === first![0]) && isMonotonic(second!)) {
    const warning = { code: 'constant-column', message: 'The first column has the same number everywhere; the second was taken as the abscissa.' };
    return { curves: ordinates(1, 2), warnings: [warning] };
  }
  const pairs = columns.length % 2 === 0 && columns.length > 2 && (columns.every((c, i) => i % 2 === 1 || sameColumn(c, first!)) || arePairs(columns));
  const curves = pairs ? columns.flatMap((_, i) => (i % 2 === 1 ? [{ x: i - 1, y: i }] : [])) : ordinates(0, 1);
  const warning = { code: 'columns-unnamed', message: `The file does not name its ${columns.length} columns; the first was taken as the abscissa and each other one as a curve.` };
  return { curves, warnings: columns.length > 2 && !pairs ? [warning] : [] };
}

/** The ordinates that are results, where columns of the raw measurement stand beside them. */
function takeResults(ys: readonly number[], roles: readonly Role[], names: readonly string[]): { taken: readonly number[]; warnings: ReadWarning[] } {
  const curves = ys.filter((c) => roles[c] !== 'spread');
  const results = curves.filter((c) => roles[c] === 'y');
  const mixed = curves.some((c) => PARTNER.test(names[c]!)) && curves.length > 1;
  let taken = curves;
  const asRead = curves.filter((c) => AS_READ.test(names[c]!));
  if (asRead.length > 0) taken = asRead;
  else if (mixed) taken = results.length > 0 ? results.slice(-1) : curves.filter((c) => !PARTNER.test(names[c]!)).slice(-1);
  if (taken.length === 0) taken = curves.slice(0, 1);
  const left = ys.filter((c) => !taken.includes(c));
  if (left.length === 0) return { taken, warnings: [] };
  const message = `Taken as the curve: ${taken.map((c) => label(names, c)).join(', ')}. Left in the raw file: ${left.map((c) => label(names, c)).join(', ')}.`;
  return { taken, warnings: [{ code: 'columns-chosen', message }] };
}

function withNames(columns: readonly Float64Array[], names: readonly string[]): ColumnChoice {
  const roles = names.map((name, c) => roleOf(name, columns[c]!));
  const axes = roles.flatMap((r, c) => (r === 'x' || r === 'pixel' ? [c] : []));
  const ordinates = roles.flatMap((r, c) => (r === 'x' || r === 'pixel' ? [] : [c]));
  if (axes.length === 0) return chosen(columns, [{ x: 0, ys: ordinates.filter((c) => c !== 0) }], roles, names, []);
  if (ordinates.length === 0) return chosen(columns, [{ x: axes[0]!, ys: columns.flatMap((_, c) => (c === axes[0] ? [] : [c])) }], roles, names, []);
  const leading = axes.filter((c) => c < ordinates[0]!);
  const later = axes.filter((c) => c > ordinates[0]!);
  const main = leading.find((c) => roles[c] === 'x') ?? leading[0] ?? axes.find((c) => roles[c] === 'x') ?? axes[0]!;
  // Words can deceive; an axis runs one way.
  if (main !== 0 && !isMonotonic(columns[main]!) && isMonotonic(columns[0]!)) {
    return chosen(columns, [{ x: 0, ys: columns.flatMap((_, c) => (c === 0 ? [] : [c])) }], roles, names, []);
  }
  // x y x y …: each further abscissa has ordinates of its own behind it.
  const repeated = leading.length > 0 && later.length > 0 && later.every((c) => roles[c + 1] !== undefined && ordinates.includes(c + 1));
  const groups = repeated
    ? [main, ...later].map((x, g, all) => ({ x, ys: ordinates.filter((c) => c > x && c < (all[g + 1] ?? columns.length)) }))
    : [{ x: main, ys: ordinates }];
  const unused = axes.filter((c) => !groups.some((g) => g.x === c));
  return chosen(columns, groups, roles, names, unused);
}

function chosen(columns: readonly Float64Array[], groups: readonly { x: number; ys: readonly number[] }[], roles: readonly Role[], names: readonly string[], unused: readonly number[]): ColumnChoice {
  const curves: Curve[] = [];
  const warnings: ReadWarning[] = [];
  for (const group of groups) {
    const { taken, warnings: found } = takeResults(group.ys, roles, names);
    curves.push(...taken.map((y) => ({ x: group.x, y })));
    warnings.push(...found);
  }
  if (unused.length > 0 && columns.length > 2) {
    const message = `Taken as the abscissa: ${label(names, groups[0]!.x)}. The file has it also as ${unused.map((c) => label(names, c)).join(', ')}.`;
    warnings.push({ code: 'axis-chosen', message });
  }
  return { curves, warnings };
}

/**
 * Decides which column is the abscissa and which are curves. With names: the axis words decide; where dark, reference or
 * background stand beside a result, the result alone is the curve; columns of errors are never curves. Without names: the first
 * column is the abscissa (the second where the first only counts) and every other column a curve.
 */
export function chooseColumns(columns: readonly Float64Array[], names: readonly string[] | undefined): ColumnChoice {
  return names ? withNames(columns, names) : withoutNames(columns);
}
