import { ok, type Result } from '../result.ts';
import type { TableForm } from './jcamp-form.ts';
import { numberList, pushNumber, takeNumbers } from './number-list.ts';
import { parseNumber } from './parse-number.ts';
import { FILE_LIMITS } from './reader-defaults.ts';
import { excerpt, refusal } from './refusal.ts';
import type { TableLine } from './scan-table.ts';
import type { ReadError } from './spectrum-file.ts';

/** Pairs as written, without factors; NaN where the ordinate is "?". */
export type Groups = { readonly x: Float64Array; readonly y: Float64Array; readonly lineOf: Float64Array; readonly decimalComma: boolean };

type GroupForm = Extract<TableForm, { kind: 'groups' }>;

/** Without words in <…> and quotes, which may hold brackets of their own. */
const unquoted = (text: string): string => text.replace(/<[^<>]*>|'[^']*'|"[^"]*"/g, ' ');

/** Without brackets, words in <…>, quotes and the words themselves, which the form "(XYA)" allows. */
function withoutWords(text: string): string {
  return unquoted(text).replace(/[()]/g, ' ');
}

/** With a decimal comma only blanks and semicolons separate; otherwise commas do too. */
const SEPARATORS = { point: /[\s,;]+/, comma: /[\s;]+|,\s+/ } as const;

function readOnce(lines: readonly TableLine[], form: GroupForm, decimalComma: boolean): Result<Groups, ReadError> {
  const x = numberList(lines.length);
  const y = numberList(lines.length);
  const lineOf = numberList(lines.length);
  for (const { text, line } of lines) {
    // One (x, y, …) group per bracket where words may be left out of it, else any number of groups on a line.
    const parts = form.text && text.includes('(') ? unquoted(text).split(')').filter((p) => p.trim() !== '') : [text];
    for (const part of parts) {
      const words = (form.text ? withoutWords(part) : part.replace(/[()]/g, ' ')).split(decimalComma ? SEPARATORS.comma : SEPARATORS.point).filter((w) => w !== '');
      const arity = form.text ? Math.max(2, words.length) : form.arity;
      if (words.length === 0 || words.length % arity !== 0 || (form.text && words.length < 2)) {
        return refusal('malformed-token', `the line holds ${words.length} numbers, which are no whole groups of ${arity} (“${excerpt(text)}”). The file is damaged; export it again.`, line);
      }
      for (let i = 0; i < words.length; i += arity) {
        const px = parseNumber(words[i]!, decimalComma);
        const py = words[i + 1] === '?' ? Number.NaN : parseNumber(words[i + 1]!, decimalComma);
        const rest = form.text ? undefined : words.slice(i + 2, i + arity).find((w) => w !== '?' && parseNumber(w, decimalComma) === undefined);
        if (px === undefined || py === undefined || rest !== undefined) {
          const word = px === undefined ? words[i]! : py === undefined ? words[i + 1]! : rest!;
          return refusal('malformed-token', `“${excerpt(word)}” is no number. The file is damaged; export it again.`, line);
        }
        pushNumber(x, px);
        pushNumber(y, py);
        pushNumber(lineOf, line);
      }
      if (x.length > FILE_LIMITS.maxPoints) return refusal('too-many-points', `the table has more than ${FILE_LIMITS.maxPoints} points. Export the single spectrum.`, line);
    }
  }
  return ok({ x: takeNumbers(x), y: takeNumbers(y), lineOf: takeNumbers(lineOf), decimalComma });
}

/**
 * Reads the pairs of an `(XY..XY)` table, or the first two numbers of longer groups. Commas separate; they are decimal commas
 * only where the table has no decimal point and that reading, and not the other, gives the `points` the header promises.
 * Errors: 'malformed-token', 'no-data', 'too-many-points'.
 */
export function readGroups(lines: readonly TableLine[], form: GroupForm, points: number | undefined): Result<Groups, ReadError> {
  if (lines.length === 0) return refusal('no-data', 'The data table is empty. Export the spectrum again.');
  const plain = readOnce(lines, form, false);
  const mayBeComma = lines.some((l) => l.text.includes(',')) && !lines.some((l) => l.text.includes('.'));
  if (!mayBeComma || (plain.ok && (points === undefined || plain.value.x.length === points))) return plain;
  const comma = readOnce(lines, form, true);
  if (comma.ok && (!plain.ok || comma.value.x.length === points)) return comma;
  return plain;
}
