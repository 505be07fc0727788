import { ok, type Result } from '../result.ts';
import type { TableHeader } from './jcamp-header.ts';
import { CHECK_TOLERANCES } from './reader-defaults.ts';
import { refusal } from './refusal.ts';
import type { DataLine } from './scan-table.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';

/** The abscissae of an evenly spaced table: x of point i is first + i·step. */
export type Grid = {
  readonly first: number;
  readonly step: number;
  /** Share of the lines whose X differs from the grid by more than its own rounding. */
  readonly offShare: number;
  readonly warnings: readonly ReadWarning[];
};

/** A line with the index of its first ordinate. */
export type GridLine = DataLine & { readonly point: number };

type Candidate = { readonly from: 'npoints' | 'count' | 'delta' | 'lines'; readonly first: number; readonly step: number };
type Fit = Candidate & { readonly scale: number; readonly residuals: readonly number[]; readonly off: number; readonly rms: number };

/** What rounding can hide at a line: the last digit of its X. */
const rounding = (line: GridLine, fit: Fit): number => CHECK_TOLERANCES.lastDigits * line.xDigit * Math.abs(fit.scale) + 1e-9 * Math.abs(line.x * fit.scale);
const tolerance = (line: GridLine, fit: Fit): number => CHECK_TOLERANCES.xStepShare * Math.abs(fit.step) + rounding(line, fit);

/** More than one whole point away from the grid. */
const isFar = (line: GridLine, k: number, fit: Fit): boolean => Math.abs(fit.residuals[k]!) > Math.abs(fit.step) + rounding(line, fit);

function candidates(header: TableHeader, n: number, lines: readonly GridLine[]): Candidate[] {
  const head = lines[0]!;
  const tail = lines.at(-1)!;
  const first = header.firstX?.value ?? head.x * header.xFactor;
  const last = header.lastX?.value;
  const points = header.points?.value ?? n;
  const list: Candidate[] = [];
  if (last !== undefined && points > 1) list.push({ from: 'npoints', first, step: (last - first) / (points - 1) });
  if (last !== undefined && points !== n && n > 1) list.push({ from: 'count', first, step: (last - first) / (n - 1) });
  if (header.deltaX) {
    const delta = header.deltaX.value;
    const turned = last !== undefined && Math.sign(delta) !== Math.sign(last - first);
    list.push({ from: 'delta', first, step: turned ? -delta : delta });
  }
  if (last === undefined && tail.point > head.point) {
    list.push({ from: 'lines', first, step: ((tail.x - head.x) * header.xFactor) / (tail.point - head.point) });
  }
  return list.filter((c) => c.step !== 0 && Number.isFinite(c.step));
}

function fitLines(candidate: Candidate, scale: number, lines: readonly GridLine[]): Fit {
  const residuals = lines.map((l) => l.x * scale - (candidate.first + l.point * candidate.step));
  const rms = Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / lines.length) / Math.abs(candidate.step);
  const bare: Fit = { ...candidate, scale, residuals, off: 0, rms };
  return { ...bare, off: lines.filter((l, k) => Math.abs(residuals[k]!) > tolerance(l, bare)).length };
}

/** The grid that the lines' own X agree with; the header's first where several do. */
function bestFit(header: TableHeader, n: number, lines: readonly GridLine[]): Fit | undefined {
  const scales = header.xFactor === 1 ? [1] : [header.xFactor, 1];
  const fits = scales.flatMap((s) => candidates(header, n, lines).map((c) => fitLines(c, s, lines)));
  const [head] = fits;
  if (!head) return undefined;
  if (head.off === 0 && (header.points?.value ?? n) === n) return head;
  return fits.reduce((best, f) => (f.off < best.off || (f.off === best.off && f.rms < 0.999 * best.rms) ? f : best), head);
}

/** Middle of the changes of the residual from line to line: what the writer's rounding does, whatever single lines do. */
function usualChange(fit: Fit): number {
  const changes = fit.residuals.slice(1).map((r, k) => Math.abs(r - fit.residuals[k]!)).toSorted((a, b) => a - b);
  return changes[changes.length >> 1] ?? 0;
}

/**
 * Lines at which the X jumps against the count of points, compared with the lines before. A jump that stays means that points
 * were lost or added; one line alone is a misprint of its X. Where the count differs from NPOINTS, coarse digits excuse no more
 * than the other lines need.
 */
function findJumps(fit: Fit, lines: readonly GridLine[], countAgrees: boolean): { lost: GridLine | undefined; misprints: GridLine[] } {
  const needed = CHECK_TOLERANCES.xStepShare * Math.abs(fit.step) + 4 * usualChange(fit);
  const allowed = (line: GridLine): number => (countAgrees ? tolerance(line, fit) : Math.min(tolerance(line, fit), needed));
  const misprints: GridLine[] = [];
  const early = fit.residuals.slice(0, 5).toSorted((a, b) => a - b);
  let level = early[early.length >> 1]!;
  for (let k = 0; k < lines.length; k += 1) {
    const line = lines[k]!;
    const r = fit.residuals[k]!;
    if (Math.abs(r - level) <= allowed(line)) {
      level = r;
      continue;
    }
    const next = fit.residuals[k + 1];
    if (next !== undefined && Math.abs(next - level) > allowed(lines[k + 1]!)) return { lost: line, misprints };
    // Some writers give every line but the first the X of its first new ordinate: then the first is right and not the rest.
    if (Math.abs(r) > allowed(line)) misprints.push(line);
  }
  return { lost: undefined, misprints };
}

const offGrid = (line: GridLine, fit: Fit): string => {
  const expected = fit.first + line.point * fit.step;
  return `the line begins at ${Number((line.x * fit.scale).toPrecision(10))} where ${Number(expected.toPrecision(10))} follows from FIRSTX, LASTX and the points before it`;
};

/** Names the line, with the X that follows from the line before it and the point distance the header gives. */
function pointsLost(header: TableHeader, n: number, lines: readonly GridLine[], broken: GridLine, fit: Fit): ReturnType<typeof refusal> {
  const before = lines[lines.indexOf(broken) - 1];
  const step = candidates(header, n, lines)[0]?.step ?? fit.step;
  const expected = before ? before.x * fit.scale + (broken.point - before.point) * step : fit.first;
  const found = Number((broken.x * fit.scale).toPrecision(10));
  return refusal('points-lost', `the line begins at ${found} where ${Number(expected.toPrecision(8))} follows from the line before it: points are missing or too many there. The file is damaged; export it again.`, broken.line);
}

/** Lines worth telling: misprints, lines a whole point away, and the last line where the grid does not end as the lines do. */
function offLines(fit: Fit, lines: readonly GridLine[], misprints: readonly GridLine[]): GridLine[] {
  const last = lines.length - 1;
  return lines.filter((l, k) => misprints.includes(l) || isFar(l, k, fit) || (k === last && Math.abs(fit.residuals[k]!) > tolerance(l, fit)));
}

function gridWarnings(header: TableHeader, fit: Fit, n: number, lines: readonly GridLine[], misprints: readonly GridLine[]): ReadWarning[] {
  const warnings: ReadWarning[] = [];
  const off = offLines(fit, lines, misprints);
  const told = off[0];
  if (told) {
    const count = off.length;
    warnings.push({ code: 'x-check', message: `${offGrid(told, fit).replace(/^the/, 'The')}${count > 1 ? `; ${count} lines differ` : ''}. The points were kept.`, line: told.line });
  }
  if (fit.scale !== header.xFactor) {
    warnings.push({ code: 'xfactor-applied', message: 'The abscissae of the lines are already in XUNITS, although XFACTOR is not 1; the grid was taken from FIRSTX and LASTX.', line: lines[0]!.line });
  }
  const end = fit.first + (n - 1) * fit.step;
  if (header.lastX && Math.abs(end - header.lastX.value) > CHECK_TOLERANCES.xStepShare * Math.abs(fit.step) + header.lastX.digit) {
    warnings.push({ code: 'lastx', message: `##LASTX says ${header.lastX.value}, the points end at ${Number(end.toPrecision(10))}.`, line: header.lastX.line });
  }
  if (!header.lastX) warnings.push({ code: 'lastx-missing', message: `##LASTX is missing; the point distance ${Number(fit.step.toPrecision(8))} was taken from ${fit.from === 'delta' ? '##DELTAX' : 'the lines'}.` });
  return warnings;
}

/**
 * The grid of a table of `n` points, checked against the X that stands on each line (its factor scales only these; the true
 * abscissae follow from FIRSTX, LASTX and NPOINTS). Errors: 'firstx-lastx', 'points-lost', 'x-off-grid'.
 */
export function resolveGrid(header: TableHeader, n: number, lines: readonly GridLine[]): Result<Grid, ReadError> {
  if (n === 1) return ok({ first: header.firstX?.value ?? lines[0]!.x * header.xFactor, step: 0, offShare: 0, warnings: [] });
  if (header.firstX && header.lastX && header.firstX.value === header.lastX.value) {
    return refusal('firstx-lastx', `##FIRSTX and ##LASTX are both ${header.firstX.value}, but there are ${n} points. Export the file again.`, header.lastX.line);
  }
  const fit = bestFit(header, n, lines);
  if (!fit) return refusal('firstx-lastx', 'the file gives neither ##LASTX nor ##DELTAX nor usable abscissae on its lines. Export it again.', lines[0]!.line);
  const countAgrees = header.points === undefined || header.points.value === n;
  const steady = usualChange(fit) <= CHECK_TOLERANCES.xStepShare * Math.abs(fit.step) + rounding(lines[0]!, fit);
  const { lost, misprints } = steady ? findJumps(fit, lines, countAgrees) : { lost: undefined, misprints: [] };
  const last = lines.at(-1)!;
  const broken = lost ?? (misprints.includes(last) && lines.length > 1 && !countAgrees ? last : undefined);
  if (broken) return pointsLost(header, n, lines, broken, fit);
  const far = lines.filter((l, k) => isFar(l, k, fit));
  if (far.length > lines.length / 2 || !steady) {
    const told = far[0] ?? last;
    return refusal('x-off-grid', `${offGrid(told, fit)}, and ${far.length} of ${lines.length} lines disagree like this. Export the file again.`, told.line);
  }
  return ok({ first: fit.first, step: fit.step, offShare: lines.filter((l, k) => Math.abs(fit.residuals[k]!) > rounding(l, fit)).length / lines.length, warnings: gridWarnings(header, fit, n, lines, misprints) });
}
