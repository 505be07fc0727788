import type { ConclusionView } from '../../contract/work.ts';
import { CONCLUSION_WORDS } from '../../domain/conclusion.ts';
import { findingWords } from '../finding-words.ts';
import type { OpinionsPart } from '../sections/opinions.ts';
import { localDate } from './local-time.ts';
import type { ReportSource, SourceStone } from './report-source.ts';
import { acceptedFindings, findingNumber, stoneHeading } from './stone-result.ts';

export type StoneOpinion = OpinionsPart['stones'][number];

/** What is reported: the newest conclusion, or undetermined where the second person does not agree with it. */
function conclusionOf(newest: ConclusionView | undefined, zone: string): StoneOpinion['conclusion'] {
  if (newest === undefined) return null;
  const { confirmation } = newest;
  const common = { rules: newest.rules.replace(/^rules\s+/, ''), examiner: newest.by, concludedOn: localDate(newest.at, zone) };
  if (confirmation !== null && !confirmation.agrees) {
    return {
      ...common, id: 'undetermined', words: CONCLUSION_WORDS.undetermined, departure: '', secondPerson: '', confirmedOn: '',
      reasons: `The two persons who examined this stone do not agree. ${newest.by} concluded “${CONCLUSION_WORDS[newest.conclusion]}”; ${confirmation.by} did not agree on ${localDate(confirmation.at, zone)}: ${confirmation.reason}`,
    };
  }
  return {
    ...common, id: newest.conclusion, words: CONCLUSION_WORDS[newest.conclusion], reasons: newest.reasons, departure: newest.departure,
    secondPerson: confirmation?.by ?? '', confirmedOn: confirmation === null ? '' : localDate(confirmation.at, zone),
  };
}

/** What is reported of a stone now, or null where nobody has concluded. */
export const reportedConclusion = (source: Pick<ReportSource, 'laboratory'>, { conclusions }: SourceStone): StoneOpinion['conclusion'] => conclusionOf(conclusions.at(-1), source.laboratory.zone);

/** The opinion on one stone, with what each finding was taken to say. */
export function stoneOpinion(source: ReportSource, entry: SourceStone): StoneOpinion {
  return {
    label: entry.stone.label, heading: stoneHeading(entry.stone),
    conclusion: reportedConclusion(source, entry), ...(entry.withheld === true && { withheld: true as const }),
    weights: acceptedFindings(entry).map((finding, index) => ({
      finding: findingNumber(index), says: findingWords(finding.strength, finding.supports), strength: finding.strength, supports: finding.supports, counts: finding.counts,
    })),
  };
}
