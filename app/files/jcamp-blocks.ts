import type { JcampRecord } from './jcamp-records.ts';
import type { ReadWarning } from './spectrum-file.ts';

/** The records between a TITLE and its END; a LINK block's own blocks stand after it in the list. */
export type JcampBlock = {
  readonly title: string;
  readonly line: number;
  readonly records: readonly JcampRecord[];
  readonly ended: boolean;
  readonly link: boolean;
};

type OpenBlock = { title: string; line: number; records: JcampRecord[]; ended: boolean; link: boolean };

const DATA_LABELS = new Set(['XYDATA', 'XYPOINTS', 'PEAKTABLE', 'PEAKASSIGNMENTS', 'RADATA', 'NTUPLES', 'DATATABLE']);

const isLink = (r: JcampRecord): boolean => (r.label === 'DATATYPE' && /\bLINK\b/i.test(r.value)) || r.label === 'BLOCKS';

/** The text of a record: its first line, or the following lines where the first is empty. */
export function recordText(record: JcampRecord, lines: readonly string[]): string {
  if (record.value !== '') return record.value;
  for (let i = record.from; i < record.to; i += 1) {
    const text = lines[i]!.trim();
    if (text !== '' && !text.startsWith('$$')) return text;
  }
  return '';
}

function missingEnd(block: OpenBlock): ReadWarning {
  const named = block.title === '' ? 'The file' : `The block “${block.title}”`;
  return { code: 'missing-end', message: `${named} has no ##END=. Compare its last value with the instrument: the file may have been cut off there.`, line: block.line };
}

/**
 * Groups records into blocks: nested LINK blocks, blocks one after the other without LINK, and blocks whose END is missing.
 * Warnings: 'missing-title', 'missing-end', 'blocks' (another number than ##BLOCKS says).
 */
export function groupBlocks(records: readonly JcampRecord[], lines: readonly string[]): { blocks: JcampBlock[]; warnings: ReadWarning[] } {
  const blocks: OpenBlock[] = [];
  const warnings: ReadWarning[] = [];
  const stack: OpenBlock[] = [];
  const open = (title: string, line: number): OpenBlock => {
    const block: OpenBlock = { title, line, records: [], ended: false, link: false };
    blocks.push(block);
    stack.push(block);
    return block;
  };
  for (const record of records) {
    let top = stack.at(-1);
    if (record.label === 'TITLE') {
      if (top && !top.link) {
        if (top.records.some((r) => DATA_LABELS.has(r.label))) {
          warnings.push(missingEnd(top));
          stack.pop();
        } else top.link = true; // a wrapper that does not call itself LINK
      }
      top = open(recordText(record, lines), record.line);
    } else if (record.label === 'END') {
      const ended = stack.pop();
      if (ended) ended.ended = true;
      continue;
    } else if (!top) {
      top = open('', record.line);
      warnings.push({ code: 'missing-title', message: 'The block has no ##TITLE=.', line: record.line });
    }
    top.records.push(record);
    if (isLink(record)) top.link = true;
  }
  const unended = stack.findLast((b) => !b.link) ?? stack.at(-1);
  if (unended) warnings.push(missingEnd(unended));
  const links = blocks.filter((b) => b.link);
  // Nested LINK blocks cannot be compared with one number.
  if (links.length === 1) warnings.push(...blockCountWarning(links[0]!, blocks.length - 1));
  return { blocks, warnings };
}

function blockCountWarning(link: OpenBlock, found: number): ReadWarning[] {
  const record = link.records.find((r) => r.label === 'BLOCKS');
  const said = record ? Number.parseInt(record.value, 10) : Number.NaN;
  // Some writers count the LINK block itself.
  if (!record || Number.isNaN(said) || said === found || said === found + 1) return [];
  return [{ code: 'blocks', message: `##BLOCKS says ${said}, the file holds ${found}.`, line: record.line }];
}
