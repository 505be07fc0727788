import type { ReadOptions, ReadWarning, SpectrumBlock } from '../../../app/files/spectrum-file.ts';
import type { Result } from '../../../app/result.ts';
import { extremes } from '../extremes.ts';
import { gatherFiles } from '../gather-files.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { readOne, type ReadFile, type UnreadFile } from '../read-one.ts';

export type ReadCommand = { readonly files: readonly string[]; readonly stated: ReadOptions; readonly json: boolean };

/** Reads instrument files and says what is in them. */
export async function runRead({ files, stated, json }: ReadCommand, io: CliIo): Promise<ExitCode> {
  const outcomes: Result<ReadFile, UnreadFile>[] = [];
  for (const file of gatherFiles(files, io)) {
    const outcome = await readOne(file, stated);
    outcomes.push(outcome);
    if (!json) io.out(outcome.ok ? inWords(outcome.value) : `${outcome.error.file}\n  Not read. ${outcome.error.error.message}\n`);
  }
  if (json) printJson(io, outcomes.map(asJson));
  return outcomes.every((outcome) => outcome.ok) ? EXIT.done : EXIT.failed;
}

function asJson(outcome: Result<ReadFile, UnreadFile>): unknown {
  if (!outcome.ok) {
    const { file, error, sha256 } = outcome.error;
    return { file, ok: false, error, ...(sha256 === undefined ? {} : { sha256 }) };
  }
  const { file, format, warnings, blocks, sha256 } = outcome.value;
  return { file, ok: true, format, warnings, blocks: blocks.map(summary), sha256 };
}

function summary({ title, xUnit, yUnit, x, y }: SpectrumBlock) {
  const { min, max } = extremes(y);
  return { title, xUnit, yUnit, points: x.length, firstX: x[0] ?? 0, lastX: x[x.length - 1] ?? 0, minY: min, maxY: max };
}

const FORMAT_WORDS = { 'jcamp-dx': 'JCAMP-DX', 'delimited-text': 'delimited text', spc: 'SPC' } as const;

function inWords({ file, format, warnings, blocks, sha256 }: ReadFile): string {
  const curves = blocks.length === 1 ? '1 curve' : `${blocks.length} curves`;
  const lines = blocks.map((block) => {
    const { title, xUnit, yUnit, points, firstX, lastX, minY, maxY } = summary(block);
    return `  ${title === '' ? '(no title)' : title}: ${points} points, ${short(firstX)} to ${short(lastX)} ${xUnit}, ${yUnit} ${short(minY)} to ${short(maxY)}`;
  });
  return [file, `  ${FORMAT_WORDS[format]}, ${curves}, SHA-256 ${sha256}`, ...lines, ...warnings.map(warningInWords), ''].join('\n');
}

/** Ten digits are more than an instrument gives and hide the dust of binary fractions; JSON has them all. */
const short = (value: number): string => String(Number(value.toPrecision(10)));

export function warningInWords({ message, line }: ReadWarning): string {
  return `  Warning${line === undefined ? '' : `, line ${line}`}: ${message}`;
}
