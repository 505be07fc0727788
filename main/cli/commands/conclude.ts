import { readFileSync } from 'node:fs';
import path from 'node:path';
import { CONCLUSION_WORDS } from '../../../app/domain/conclusion.ts';
import { METHODS } from '../../../app/domain/method.ts';
import { concludeDocument, concludeFromDocument, type ConcludeOutcome } from '../../../app/evidence/conclude-document.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble, type Trouble } from '../trouble.ts';

export type ConcludeCommand = { readonly file: string; readonly json: boolean };

const NEXT = 'See docs/command-line.md for the form of the file.';

/** The text of a file, or of standard input for “-”. */
async function textOf(file: string, io: CliIo): Promise<Result<string, Trouble>> {
  if (file === '-') return ok(new TextDecoder().decode(await io.readStdin()));
  try {
    return ok(readFileSync(path.resolve(io.workingFolder, file), 'utf8'));
  } catch (fault) {
    const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
    return err({ code: 'cannot-read', message: `“${file}” cannot be read (${reason}).`, next: 'Name a file that is there, or - for standard input.' });
  }
}

function documentOf(file: string, text: string): Result<ConcludeOutcome, Trouble> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (fault) {
    return err({ code: 'not-json', message: `“${file}” is not JSON: ${fault instanceof Error ? fault.message : String(fault)}.`, next: NEXT });
  }
  const parsed = concludeDocument.safeParse(value);
  if (parsed.success) return ok(concludeFromDocument(parsed.data));
  const said = parsed.error.issues.slice(0, 5).map((issue) => `${issue.path.join('.') || 'the document'}: ${issue.message}`).join('; ');
  return err({ code: 'invalid-document', message: `“${file}” is not a stone to conclude: ${said}`, next: NEXT });
}

/** Weighs the findings of one stone described in a file; needs no casebook. */
export async function runConclude({ file, json }: ConcludeCommand, io: CliIo): Promise<ExitCode> {
  const text = await textOf(file, io);
  const outcome = text.ok ? documentOf(file, text.value) : text;
  if (!outcome.ok) return sayTrouble(outcome.error, json, io);
  if (json) printJson(io, asJson(file, outcome.value));
  else io.out(inWords(outcome.value));
  return EXIT.done;
}

function asJson(file: string, { proposal, warnings }: ConcludeOutcome): unknown {
  const { conclusion, rule, reasons, against, missing, nextTests, counted, hypotheses, chain, rules, table } = proposal;
  return { file, ok: true, conclusion, words: CONCLUSION_WORDS[conclusion], rule, reasons, against, missing, nextTests, warnings, counted, hypotheses, chain, rules, table };
}

const list = (title: string, sentences: readonly string[]): string => (sentences.length === 0 ? '' : `\n${title}\n${sentences.map((sentence) => `  • ${sentence}`).join('\n')}\n`);

function inWords({ proposal, warnings }: ConcludeOutcome): string {
  const next = proposal.nextTests.map(({ method, why, caution }) => `${METHODS[method].name}: ${why}${caution === undefined ? '' : ` (${caution})`}`);
  return `${CONCLUSION_WORDS[proposal.conclusion]}\n${list('Reasons', proposal.reasons)}${list('Against it', proposal.against)}${list('Missing', proposal.missing)}${list('Next tests', next)}${list('Warnings', warnings.map((warning) => warning.message))}\n${proposal.rules}, ${proposal.table ?? ''}\n`;
}
