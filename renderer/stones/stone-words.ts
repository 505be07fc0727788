import type { ItemView, StoneSummary } from '../../app/contract/cases.ts';
import { COLOUR_CLASS_WORDS } from '../../app/domain/colour-class.ts';
import { CUSTODY_EVENT_WORDS } from '../../app/domain/custody-event.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { showClock, showShortDay } from '../look/time.ts';

/** "round, loose, 0.412 ct, colourless to near colourless" */
export function stoneWords(stone: StoneSummary): string {
  return [
    stone.shape, stone.mounted ? `mounted${stone.position ? `, ${stone.position}` : ''}` : 'loose', stone.weight === null ? '' : `${formatCarat(stone.weight)} ct`,
    stone.colourClass === 'unknown' ? 'colour not stated' : COLOUR_CLASS_WORDS[stone.colourClass],
  ].filter(Boolean).join(', ');
}

/** Where the item is, as a tag: "in custody: bench 2, seal 20931 opened 09:14". Times of another day carry the day. */
export function custodyTag(item: Pick<ItemView, 'custody'>, zone: string, today: string): string {
  const { place, holder, seal, lastEvent, at } = item.custody;
  const day = showShortDay(at, zone);
  const when = day === showShortDay(`${today}T12:00:00.000Z`, 'UTC') ? showClock(at, zone) : day;
  if (lastEvent === 'returned') return `returned to client ${when}`;
  const where = place || (holder ? `with ${holder}` : 'place not written down');
  const sealWords = lastEvent === 'opened' ? `seal ${seal} opened ${when}` : lastEvent === 'sealed' && seal ? `seal ${seal} set ${when}` : seal ? `seal ${seal}` : '';
  const event = lastEvent === 'opened' || (lastEvent === 'sealed' && seal) ? '' : `${CUSTODY_EVENT_WORDS[lastEvent]} ${when}`;
  return `in custody: ${[where, sealWords, event].filter(Boolean).join(', ')}`;
}

const KIND_WORDS: Readonly<Record<ItemView['kind'], string>> = { loose: 'loose', jewellery: '', lot: 'lot' };
/** "A loose", "B bracelet", "C lot, 0.9–1.1 mm": the item as the tree names it. */
export function itemWords(item: ItemView): string {
  if (item.kind === 'loose') return KIND_WORDS.loose;
  return item.kind === 'lot' ? `lot, ${item.declared}` : item.declared;
}
