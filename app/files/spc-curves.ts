import { ok, type Result } from '../result.ts';
import { FILE_LIMITS } from './reader-defaults.ts';
import { refusal } from './refusal.ts';
import { FLOAT_EXPONENT, type SpcHeader } from './spc-header.ts';
import type { ReadError, ReadWarning } from './spectrum-file.ts';

export type SpcCurve = { readonly x: Float64Array; readonly y: Float64Array; /** Third coordinate of a curve among several: time, place, temperature. */ readonly z: number };
export type SpcCurves = { readonly curves: readonly SpcCurve[]; readonly warnings: readonly ReadWarning[] };

const SUBHEADER_BYTES = 32;
const DIRECTORY_ENTRY_BYTES = 12;
const CUT_OFF = 'the file holds fewer points than its header promises: it was cut off. Copy or export it again.';

type Source = { readonly bytes: Uint8Array; readonly view: DataView; readonly header: SpcHeader; /** Data end here: at the log, the directory or the file's end. */ readonly end: number };
type Subheader = { readonly exponent: number; readonly z: number; readonly points: number };

function subheaderAt({ view, header }: Source, at: number): Subheader {
  return { exponent: view.getInt8(at + 1), z: view.getFloat32(at + 4, header.littleEndian), points: view.getUint32(at + 16, header.littleEndian) };
}

/** The exponent that governs a curve's ordinates: its own in a file of several, unless its writer left it empty. */
function exponentOf(header: SpcHeader, sub: Subheader): number {
  if (header.old) return header.multiple && sub.exponent !== 0 ? sub.exponent : header.exponent;
  if (!header.multiple || sub.exponent === 0) return header.exponent;
  return sub.exponent;
}

/** Old files write the two halves of a 32-bit number in exchanged order. */
const swapped = (view: DataView, at: number): number => (view.getInt16(at, true) << 16) | view.getUint16(at + 2, true);

function ordinates({ view, header }: Source, at: number, count: number, exponent: number): Float64Array {
  const { littleEndian, short, old } = header;
  const y = new Float64Array(count);
  if (exponent === FLOAT_EXPONENT) for (let i = 0; i < count; i++) y[i] = view.getFloat32(at + 4 * i, littleEndian);
  else if (short) { const factor = 2 ** (exponent - 16); for (let i = 0; i < count; i++) y[i] = view.getInt16(at + 2 * i, littleEndian) * factor; }
  else { const factor = 2 ** (exponent - 32); for (let i = 0; i < count; i++) y[i] = (old ? swapped(view, at + 4 * i) : view.getInt32(at + 4 * i, littleEndian)) * factor; }
  return y;
}

function abscissae({ view, header }: Source, at: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => view.getFloat32(at + 4 * i, header.littleEndian));
}

function evenX({ firstX, lastX, points }: SpcHeader): Float64Array {
  return Float64Array.from({ length: points }, (_, i) => (i === points - 1 ? lastX : firstX + ((lastX - firstX) * i) / (points - 1)));
}

type OneCurve = { readonly curve: SpcCurve; readonly next: number };

/** One subheader and its points. `shared` are the abscissae that all curves have in common; null: they stand before the ordinates. */
function curveAt(source: Source, at: number, shared: Float64Array | null): Result<OneCurve, ReadError> {
  const { header, end } = source;
  if (at + SUBHEADER_BYTES > end) return refusal('cut-off', CUT_OFF);
  const sub = subheaderAt(source, at);
  const exponent = exponentOf(header, sub);
  const count = shared?.length ?? (sub.points > 0 ? sub.points : header.points);
  if (header.old && exponent === FLOAT_EXPONENT) return refusal('spc-unknown-form', 'the file is of the old form with floating-point ordinates, which is not documented. Export it again in the new form or as text.');
  if (exponent !== FLOAT_EXPONENT && Math.abs(exponent) > 127) return refusal('spc-damaged', 'the scale of the ordinates is impossible: the file is damaged. Export it again.');
  if (!(count >= 2) || count > FILE_LIMITS.maxPoints) return refusal('spc-damaged', `a curve of ${count} points is no spectrum: the file is damaged. Export it again.`);
  const width = exponent !== FLOAT_EXPONENT && header.short ? 2 : 4;
  const xBytes = shared ? 0 : 4 * count;
  const from = at + SUBHEADER_BYTES;
  const next = from + xBytes + width * count;
  if (next > end) return refusal('cut-off', CUT_OFF);
  return ok({ curve: { x: shared ?? abscissae(source, from, count), y: ordinates(source, from + xBytes, count, exponent), z: sub.z }, next });
}

/** Where each curve with abscissae of its own begins: the file's directory, or null where it has none and they follow each other. */
function directory({ view, header, bytes }: Omit<Source, 'end'>, curves: number): number[] | null {
  const at = header.points;
  if (!header.ownX || at < header.dataAt || at + curves * DIRECTORY_ENTRY_BYTES > bytes.byteLength) return null;
  const places = Array.from({ length: curves }, (_, i) => view.getUint32(at + DIRECTORY_ENTRY_BYTES * i, header.littleEndian));
  return places.every((place) => place >= header.dataAt && place < bytes.byteLength) ? places : null;
}

function checkCounts(header: SpcHeader, curves: number): Result<null, ReadError> {
  if (curves > FILE_LIMITS.maxColumns) return refusal('too-many-curves', `the file holds ${curves} curves. Export fewer at a time, at most ${FILE_LIMITS.maxColumns}.`);
  if (header.ownX) return ok(null);
  if (!Number.isInteger(header.points) || header.points < 2) return refusal('too-few-points', 'the file has fewer than two points, which is no spectrum. Export it again.');
  if (header.points * curves > FILE_LIMITS.maxPoints) return refusal('too-many-points', `the file claims ${header.points * curves} points. Export it in parts.`);
  if (!header.listedX && !(Number.isFinite(header.firstX) && Number.isFinite(header.lastX) && header.firstX !== header.lastX)) return refusal('axis-constant', 'the first and the last abscissa are the same or no numbers: the file is damaged. Export it again.');
  return ok(null);
}

/**
 * The curves of an SPC file, points in the file's order. Every promised point must be there, or nothing is read.
 * Warning 'bytes-after-data' where bytes follow that belong to nothing.
 */
export function readSpcCurves(bytes: Uint8Array, header: SpcHeader): Result<SpcCurves, ReadError> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = header.curves ?? (header.multiple ? Infinity : 1);
  const checked = checkCounts(header, Number.isFinite(count) ? Math.max(1, count) : 1);
  if (!checked.ok) return checked;
  const hasLog = header.logAt >= header.dataAt && header.logAt < bytes.byteLength;
  const end = hasLog ? header.logAt : bytes.byteLength;
  const source: Source = { bytes, view, header, end };
  const places = Number.isFinite(count) ? directory(source, count) : null;
  let at = header.dataAt;
  let shared: Float64Array | null = null;
  if (header.listedX && !header.ownX) {
    if (at + 4 * header.points > end) return refusal('cut-off', CUT_OFF);
    shared = abscissae(source, at, header.points);
    at += 4 * header.points;
  } else if (!header.listedX && !header.ownX) shared = evenX(header);
  const curves: SpcCurve[] = [];
  // An old file of several curves does not say how many: they follow each other to the end.
  for (let i = 0; i < Math.max(1, count); i++) {
    if (!Number.isFinite(count) && i > 0 && end - at < SUBHEADER_BYTES) break;
    if (curves.length >= FILE_LIMITS.maxColumns) return refusal('too-many-curves', `the file holds more than ${FILE_LIMITS.maxColumns} curves. Export fewer at a time.`);
    const one = curveAt(source, places?.[i] ?? at, shared);
    if (!one.ok) return one;
    curves.push(one.value.curve);
    at = one.value.next;
  }
  const spare = places || hasLog ? 0 : bytes.byteLength - at;
  return ok({ curves, warnings: spare > 0 ? [{ code: 'bytes-after-data', message: `${spare} bytes after the data belong to nothing that is known and were left in the raw file.` }] : [] });
}
