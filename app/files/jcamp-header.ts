import { ok, type Result } from '../result.ts';
import { recordText } from './jcamp-blocks.ts';
import type { JcampRecord } from './jcamp-records.ts';
import { lastDigitStep, parseNumber } from './parse-number.ts';
import { excerpt, refusal } from './refusal.ts';
import type { ReadError } from './spectrum-file.ts';

/** A number of the header with the worth of its last digit and its line. */
export type HeaderNumber = { readonly value: number; readonly digit: number; readonly line: number };

/** What the header says about one data table; factors are 1 where it says nothing. */
export type TableHeader = {
  readonly firstX: HeaderNumber | undefined;
  readonly lastX: HeaderNumber | undefined;
  readonly deltaX: HeaderNumber | undefined;
  readonly firstY: HeaderNumber | undefined;
  readonly maxY: HeaderNumber | undefined;
  readonly minY: HeaderNumber | undefined;
  readonly points: HeaderNumber | undefined;
  readonly xFactor: number;
  readonly yFactor: number;
  /** Labels of factors that the header should give and does not. */
  readonly missingFactors: readonly string[];
};

/** Number with decimal point or comma, alone or before a unit ("4000.0 cm-1"). */
export function parseHeaderNumber(text: string, line: number): HeaderNumber | undefined {
  const word = text.trim().split(/\s+/)[0] ?? '';
  const value = parseNumber(word) ?? parseNumber(word, true);
  return value === undefined ? undefined : { value, digit: lastDigitStep(word), line };
}

/** Finds records of one block by their normalised label. The first one counts where a label is repeated. */
export function recordFinder(records: readonly JcampRecord[]): (label: string) => JcampRecord | undefined {
  const byLabel = new Map<string, JcampRecord>();
  for (const record of records) if (!byLabel.has(record.label)) byLabel.set(record.label, record);
  return (label) => byLabel.get(label);
}

type Read = (label: string) => Result<HeaderNumber | undefined, ReadError>;

function numberReader(find: (label: string) => JcampRecord | undefined, lines: readonly string[]): Read {
  return (label) => {
    const record = find(label);
    if (!record) return ok(undefined);
    const text = recordText(record, lines);
    if (text === '') return ok(undefined);
    const number = parseHeaderNumber(text, record.line);
    return number ? ok(number) : refusal('header-number', `##${record.written}= should be a number and is “${excerpt(text)}”. Export the file again.`, record.line);
  };
}

/** A factor: 1 where absent, refused where it is 0 (every point would collapse). */
export function checkFactor(label: string, number: HeaderNumber | undefined): Result<number, ReadError> {
  if (!number) return ok(1);
  if (number.value === 0) return refusal('factor-zero', `##${label}= is 0, so the points cannot be scaled. Export the file again.`, number.line);
  return ok(number.value);
}

/**
 * Reads the numbers of a block's header. `x` and `y` are the letters in the labels: X and Y, or R and A for interferograms.
 * Errors: 'header-number', 'factor-zero', 'npoints-invalid'.
 */
export function readTableHeader(records: readonly JcampRecord[], lines: readonly string[], x = 'X', y = 'Y'): Result<TableHeader, ReadError> {
  const read = numberReader(recordFinder(records), lines);
  const labels = [`FIRST${x}`, `LAST${x}`, `DELTA${x}`, `FIRST${y}`, `MAX${y}`, `MIN${y}`, 'NPOINTS', `${x}FACTOR`, `${y}FACTOR`];
  const numbers: (HeaderNumber | undefined)[] = [];
  for (const label of labels) {
    const number = read(label);
    if (!number.ok) return number;
    numbers.push(number.value);
  }
  const [firstX, lastX, deltaX, firstY, maxY, minY, points, xf, yf] = numbers;
  const xFactor = checkFactor(`${x}FACTOR`, xf);
  if (!xFactor.ok) return xFactor;
  const yFactor = checkFactor(`${y}FACTOR`, yf);
  if (!yFactor.ok) return yFactor;
  if (points && !(Number.isInteger(points.value) && points.value > 0)) {
    return refusal('npoints-invalid', `##NPOINTS= should count the points and is ${points.value}. Export the file again.`, points.line);
  }
  const missingFactors = [...(xf ? [] : [`${x}FACTOR`]), ...(yf ? [] : [`${y}FACTOR`])];
  return ok({ firstX, lastX, deltaX, firstY, maxY, minY, points, xFactor: xFactor.value, yFactor: yFactor.value, missingFactors });
}
