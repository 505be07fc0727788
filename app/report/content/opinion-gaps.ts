import type { ReportSource, SourceStone } from './report-source.ts';
import type { SourceLot } from './lot-part.ts';

function latestEvidence({ findings, runs }: SourceStone): string {
  const instants = [...runs.map((run) => run.at), ...findings.flatMap((finding) => finding.decidedAt === null ? [] : [finding.decidedAt])];
  return instants.reduce((latest, at) => (at > latest ? at : latest), '');
}

function stoneGap(entry: SourceStone): string | null {
  const { stone, conclusions } = entry;
  const newest = conclusions.at(-1);
  if (entry.withheld === true) return `${stone.label} is concluded; shown to you after you have stated yours.`;
  if (newest === undefined) return `${stone.label} has no conclusion yet.`;
  if (latestEvidence(entry) > newest.at) return `${stone.label} has runs or decisions that are newer than its conclusion: conclude it again.`;
  if (newest.confirmation === null) return `${stone.label} waits for a second person to confirm the conclusion.`;
  return null;
}

/** A statement on a lot whose count and results contradict each other would be wrong. */
function lotGap({ lot, results }: SourceLot): string | null {
  const { label, count, plan } = lot;
  if (count !== null && results.some((result) => result.number > count)) return `Lot ${label} has results for numbers beyond its ${count} stones: count it again, or take them back.`;
  if (count !== null && plan !== null && plan.content.lot !== count && results.length > 0) return `Lot ${label} was counted anew after its plan: make the plan for ${count} stones.`;
  return null;
}

/** What is missing of the statements on lots. */
export const lotGaps = ({ lots }: Pick<ReportSource, 'lots'>): string[] => (lots ?? []).flatMap((lot) => lotGap(lot) ?? []);

/** What is missing of the opinions on stones, each in a sentence; empty where nothing is. */
export const opinionGaps = (source: Pick<ReportSource, 'stones'>): string[] => source.stones.flatMap((entry) => stoneGap(entry) ?? []);
