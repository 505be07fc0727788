import { drawSample } from './draw-sample.ts';
import type { LotResult } from './fold-results.ts';
import type { PlanContent } from './lot-record.ts';

const some = (numbers: readonly number[]): string => `${numbers.slice(0, 8).join(', ')}${numbers.length > 8 ? ` and ${numbers.length - 8} more` : ''}`;
const named = (numbers: readonly number[]): string => `${numbers.length === 1 ? 'Stone' : 'Stones'} ${some(numbers)}`;

/** What does not fit between the count, the plan and the results of a lot, in sentences that say what to do. Empty where all fits. */
export function lotRemarks(lot: number, results: readonly LotResult[], plan: PlanContent | null, folders: ReadonlyMap<string, { label: string; outcome: LotResult['outcome'] | null }> = new Map()): string[] {
  const remarks: string[] = [];
  if (results.length > lot) remarks.push(`There are ${results.length} results and ${lot} stones: count the lot again, or take back the results that are too many.`);
  const beyond = results.filter((result) => result.number > lot).map((result) => result.number);
  if (beyond.length > 0) remarks.push(`${named(beyond)} ${beyond.length === 1 ? 'has a result' : 'have results'}, and the lot counts ${lot}: ${beyond.length === 1 ? 'it is' : 'they are'} left out of the statement until the count or the numbers are put right.`);
  if (plan !== null && plan.lot !== lot) remarks.push(`The plan was made for ${plan.lot} stones and the lot now counts ${lot}.`);
  if (plan?.drawn === 'list' && plan.seed !== null) {
    const drawn = new Set(drawSample(plan.lot, plan.size, plan.seed));
    const outside = results.filter((result) => result.number <= lot && !drawn.has(result.number)).map((result) => result.number);
    if (outside.length > 0) remarks.push(`${named(outside)} ${outside.length === 1 ? 'is' : 'are'} not in the drawn list.`);
  }
  const tied = results.filter((result) => result.stoneId !== null);
  for (const result of tied) {
    const folder = folders.get(result.stoneId!);
    if (folder === undefined) continue;
    if (folder.outcome === null) remarks.push(`Stone ${result.number} is tied to the folder ${folder.label}, which has no conclusion any more.`);
    else if (folder.outcome !== result.outcome) remarks.push(`Stone ${result.number} was entered otherwise than its folder ${folder.label} now concludes: enter it anew.`);
  }
  const twice = tied.filter((result, i) => tied.findIndex((other) => other.stoneId === result.stoneId) !== i).map((result) => result.number);
  if (twice.length > 0) remarks.push(`${named(twice)}: the same folder is tied to another number as well.`);
  return remarks;
}
