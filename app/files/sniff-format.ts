import { splitRecords } from './jcamp-records.ts';
import type { FileFormat } from './spectrum-file.ts';

/** What the first lines say the file is; the kinds that are no spectrum are named for the refusal. */
export type SniffedFormat = FileFormat | { readonly not: string };

const TABLES = new Set(['XYDATA', 'XYPOINTS', 'PEAKTABLE', 'PEAKASSIGNMENTS', 'RADATA', 'NTUPLES']);
const CORE = new Set(['XUNITS', 'YUNITS', 'DATATYPE', 'FIRSTX', 'NPOINTS', 'TITLE']);

/**
 * JCAMP-DX is known by its version record, or by a data table together with one of its core records. "##KEY=value" alone is
 * not enough: mineral databases head their text tables like that.
 */
export function sniffFormat(lines: readonly string[]): SniffedFormat {
  const first = lines.find((l) => l.trim() !== '')?.trim().toLowerCase() ?? '';
  if (/^<!doctype html|^<html/.test(first)) return { not: 'a web page' };
  if (first.startsWith('<?xml') || (/^<[a-z]+[\s>]/.test(first) && lines.some((l) => l.includes('</')))) return { not: 'an XML document' };
  if (/^[{[]\s*("|$|\{|\[)/.test(first)) return { not: 'a JSON document' };
  if (first.startsWith('{\\rtf')) return { not: 'a word-processor document' };
  const labels = new Set(splitRecords(lines).map((r) => r.label));
  if (labels.has('JCAMPDX') || labels.has('JCAMPCS')) return 'jcamp-dx';
  const hasTable = [...labels].some((l) => TABLES.has(l));
  return hasTable && [...labels].some((l) => CORE.has(l)) ? 'jcamp-dx' : 'delimited-text';
}
