import { mayBeWithheld, withholdStone } from '../../app/conclusions/withhold.ts';
import type { LotView } from '../../app/contract/lots.ts';
import { gramsToCarats, gramUnits } from '../../app/domain/weight.ts';
import { outcomeOfConclusion } from '../../app/lots/lot-outcome.ts';
import { newestOf, type LotContent, type LotRecord } from '../../app/lots/lot-record.ts';
import { aimSentence } from '../../app/lots/statement-words.ts';
import type { ReadDb } from '../../db/handle.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import type { LotNow } from '../../db/store/lots.ts';
import { sealedAmong } from '../../db/store/second-readings.ts';
import { stoneSummariesOfCase } from '../../db/store/stone-summaries.ts';

/** One line for the book; results entered by key are many, and stand in the grid. */
function words(content: LotContent): string | null {
  switch (content.kind) {
    case 'count': return `Counted: ${content.count} stones${content.sieves.length > 0 ? `, ${content.sieves.length} sizes` : ''}${content.note === '' ? '' : `. ${content.note}`}`;
    case 'plan': return `Plan: ${aimSentence(content)} ${content.reason}`;
    case 'split': return `Split into ${content.parts.length} parts${content.note === '' ? '' : `. ${content.note}`}`;
    case 'results':
      if (content.source === 'keyed') return null;
      return content.source === 'imported' ? `${content.entries.length} results from “${content.file?.name ?? ''}”` : `${content.entries.length} results from folders of stones`;
  }
}

const digestOf = (content: LotContent): string | null => (content.kind === 'results' ? content.file?.sha256 ?? null : null);

function bookLines(book: readonly LotRecord[]): LotView['book'] {
  return book.flatMap(({ ordinal, at, by, content }) => {
    const said = words(content);
    return said === null ? [] : [{ ordinal, at, by, words: said, sha256: digestOf(content) }];
  }).reverse();
}

/** Gross weight in 0.0001 ct, whatever it was weighed in; null where it was not. */
function caratsOf({ grossWeight, weightUnit }: LotNow['item']): number | null {
  if (grossWeight === null) return null;
  return weightUnit === 'g' ? gramsToCarats(gramUnits(grossWeight)) : grossWeight;
}

/** A lot as the window and the report see it. */
export function lotViewOf(db: ReadDb, { item, book, count }: LotNow): LotView {
  const stones = stoneSummariesOfCase(db, item.caseId).filter((stone) => stone.itemId === item.itemId);
  const sealed = sealedAmong(db, mayBeWithheld(stones));
  const counted = newestOf(book, 'count');
  const plan = newestOf(book, 'plan');
  const split = newestOf(book, 'split');
  return {
    caseId: item.caseId, caseNumber: item.caseNumber, clientName: item.clientName, itemId: item.itemId, label: item.label, declared: item.declared, condition: item.condition,
    returned: item.caseState === 'returned', weight: caratsOf(item), weighedIn: item.weightUnit === 'g' ? 'g' : 'ct', tolerance: theLaboratory(db).settings.weightToleranceCarat, count,
    counted: counted === undefined ? null : { at: counted.at, by: counted.by, sieves: counted.content.sieves, note: counted.content.note },
    plan: plan === undefined ? null : { at: plan.at, by: plan.by, ordinal: plan.ordinal, content: plan.content },
    split: split === undefined ? null : { at: split.at, by: split.by, parts: split.content.parts, note: split.content.note },
    folders: stones.map((stone) => withholdStone(stone, sealed)).map((stone) => ({
      stoneId: stone.id, label: stone.label, conclusion: stone.conclusion, outcome: stone.conclusion === null ? null : outcomeOfConclusion(stone.conclusion), confirmed: stone.stage === 'confirmed', waits: sealed.has(stone.id),
    })),
    book: bookLines(book),
  };
}
