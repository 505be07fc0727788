import type { ReportVerdict } from '../../app/signature/report-verdict.ts';

/** The answer in two words at most. */
export const VERDICT_WORDS: Readonly<Record<ReportVerdict['verdict'], string>> = {
  authentic: 'Authentic', altered: 'Altered', 'unknown-key': 'Unaltered, key unknown', unsigned: 'Without a signature', draft: 'A draft', 'not-a-report': 'Not a report',
};

/** How the line beside the answer is drawn: unbroken where all is well, dashed where something is missing, in the colour of warnings where something is wrong. */
export const VERDICT_LINES: Readonly<Record<ReportVerdict['verdict'], 'sound' | 'open' | 'wrong'>> = {
  authentic: 'sound', altered: 'wrong', 'unknown-key': 'open', unsigned: 'open', draft: 'open', 'not-a-report': 'open',
};
