import type { ReportVerdict } from '../../app/signature/report-verdict.ts';

/** The answer in two words at most. */
const VERDICT_WORDS: Readonly<Record<ReportVerdict['verdict'], string>> = {
  authentic: 'Authentic', altered: 'Altered', 'unknown-key': 'Unaltered, key unknown', unsigned: 'Without a signature', draft: 'A draft', 'not-a-report': 'Not a report',
};

/** How the line beside the answer is drawn: unbroken where all is well, dashed where something is missing, in the colour of warnings where something is wrong. */
const VERDICT_LINES: Readonly<Record<ReportVerdict['verdict'], 'sound' | 'open' | 'wrong'>> = {
  authentic: 'sound', altered: 'wrong', 'unknown-key': 'open', unsigned: 'open', draft: 'open', 'not-a-report': 'open',
};

/** The answer, with whether the report still counts where this casebook knows: “Authentic” alone would be read as “it holds”. */
export function answerOf({ verdict, standing }: Pick<ReportVerdict, 'verdict' | 'standing'>): { readonly words: string; readonly line: 'sound' | 'open' | 'wrong' } {
  if (standing?.state === 'withdrawn') return { words: 'Authentic, but withdrawn', line: 'wrong' };
  if (standing?.state === 'superseded') return { words: 'Authentic, but replaced', line: 'wrong' };
  if (standing?.state === 'not-ours') return { words: 'Authentic, but not held here', line: 'open' };
  return { words: VERDICT_WORDS[verdict], line: VERDICT_LINES[verdict] };
}
