import type { SourceLot } from './lot-part.ts';
import type { ReportSource, SourceStone } from './report-source.ts';

function latestEvidence({ findings, runs }: SourceStone): string {
  const instants = [...runs.map((run) => run.at), ...findings.flatMap((finding) => finding.decidedAt === null ? [] : [finding.decidedAt])];
  return instants.reduce((latest, at) => (at > latest ? at : latest), '');
}

function stoneGap(entry: SourceStone): string | null {
  const { stone, conclusions } = entry;
  const newest = conclusions.at(-1);
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

/** What stops a report from being issued, each in a sentence; empty where nothing does. */
export function reportGaps(source: Pick<ReportSource, 'laboratory' | 'case' | 'stones' | 'lots'>): string[] {
  const { laboratory, stones, lots } = source;
  const { client } = source.case;
  // ISO/IEC 17025:2017, 7.8.2.1 b and e: name and address of the laboratory, name and contact of the customer.
  const contact = [client.address, client.email, client.phone].some((text) => text.trim() !== '');
  return [
    ...(laboratory.address.trim() === '' ? ['The laboratory has no address: add it in the house settings.'] : []),
    ...(contact ? [] : [`${client.name} has neither address nor another contact: add one to the client.`]),
    ...(stones.length === 0 && !(lots ?? []).some(({ results }) => results.length > 0) ? ['No stone is entered for this case: a report needs at least one, or a lot with results.'] : []),
    ...stones.flatMap((entry) => stoneGap(entry) ?? []),
    ...(lots ?? []).flatMap((lot) => lotGap(lot) ?? []),
  ];
}
