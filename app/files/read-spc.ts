import { ok, type Result } from '../result.ts';
import { checkAxis } from './check-axis.ts';
import { keptHeader } from './kept-header.ts';
import { FILE_LIMITS, READER } from './reader-defaults.ts';
import { refusal } from './refusal.ts';
import { resolveUnits } from './resolve-units.ts';
import { readSpcCurves, type SpcCurve } from './spc-curves.ts';
import { readSpcHeader, spcText, type SpcHeader } from './spc-header.ts';
import { spcAxisWords } from './spc-units.ts';
import type { ReadError, ReadOptions, ReadWarning, SpectrumBlock, SpectrumFile } from './spectrum-file.ts';

const LOG_HEADER_BYTES = 64;

/** "key = value" lines of the file's log, where it has one. */
function logEntries(bytes: Uint8Array, { logAt, dataAt, littleEndian }: SpcHeader): (readonly [string, string])[] {
  if (logAt < dataAt || logAt + LOG_HEADER_BYTES > bytes.byteLength) return [];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const size = view.getUint32(logAt, littleEndian);
  const textAt = logAt + view.getUint32(logAt + 8, littleEndian);
  const end = Math.min(bytes.byteLength, logAt + size);
  const entries: (readonly [string, string])[] = [];
  for (let at = textAt; at < end && entries.length < FILE_LIMITS.headerEntries; ) {
    let stop = at;
    while (stop < end && bytes[stop] !== 10 && bytes[stop] !== 13 && bytes[stop] !== 0) stop++;
    const line = spcText(bytes, at, stop - at);
    const equals = line.indexOf('=');
    if (equals > 0) entries.push([line.slice(0, equals).trim(), line.slice(equals + 1).trim()]);
    at = stop + 1;
  }
  return entries;
}

const stem = (name: string): string => (name.split(/[\\/]/).at(-1) ?? name).replace(/\.[A-Za-z0-9]{1,5}$/, '');

function titleOf(name: string, header: SpcHeader, curves: readonly SpcCurve[], index: number): string {
  const base = header.memo !== '' && header.memo.length < 80 ? header.memo : stem(name);
  if (curves.length === 1) return base;
  const { z } = curves[index]!;
  const placed = curves.some((curve) => curve.z !== 0) && Number.isFinite(z);
  return `${base} · ${index + 1}${placed ? ` (z ${Number(z.toPrecision(6))})` : ''}`;
}

function readBlock(curve: SpcCurve, header: SpcHeader, title: string, entries: SpectrumBlock['header'], options: ReadOptions): Result<{ block: SpectrumBlock; warnings: ReadWarning[] }, ReadError> {
  const axis = checkAxis(curve.x, () => 0);
  if (!axis.ok) return refusal(axis.error.code, axis.error.message);
  const odd = curve.y.reduce((n, value) => (Number.isFinite(value) ? n : n + 1), 0);
  if (odd === curve.y.length) return refusal('spc-damaged', 'none of the ordinates is a number: the file is damaged. Export it again.');
  const words = spcAxisWords(header);
  const units = resolveUnits(words, curve.y, options);
  const warnings: ReadWarning[] = [...axis.value.map(({ code, message }) => ({ code, message })), ...units.warnings];
  if (odd > 0) warnings.push({ code: 'not-numbers', message: `${odd} ordinates are no numbers; they were kept as they are.` });
  return ok({ block: { title, x: curve.x, y: curve.y, xUnit: units.xUnit, yUnit: units.yUnit, xUnitText: words.x, yUnitText: units.yWords, header: entries }, warnings });
}

const once = (warnings: readonly ReadWarning[]): ReadWarning[] => warnings.filter((w, i) => warnings.findIndex((v) => v.code === w.code && v.message === w.message) === i);

/**
 * Reads an SPC file of the new or the old form: one curve or several, evenly spaced or with listed abscissae. Every curve, or a
 * refusal; nothing half-read. `bytes` must look like one (looksLikeSpc).
 */
export function readSpc(name: string, bytes: Uint8Array, options: ReadOptions): Result<SpectrumFile, ReadError> {
  const header = readSpcHeader(bytes);
  if (!header.ok) return header;
  const data = readSpcCurves(bytes, header.value);
  if (!data.ok) return data;
  const { curves } = data.value;
  const entries = keptHeader([...header.value.entries, ...logEntries(bytes, header.value)]);
  const blocks: SpectrumBlock[] = [];
  const warnings: ReadWarning[] = [...data.value.warnings];
  for (const [index, curve] of curves.entries()) {
    const read = readBlock(curve, header.value, titleOf(name, header.value, curves, index), entries, options);
    if (!read.ok) return read;
    blocks.push(read.value.block);
    warnings.push(...read.value.warnings);
  }
  return ok({ format: 'spc', reader: READER, blocks, warnings: once(warnings) });
}
