import type { ItemsPart } from '../../../../app/report/sections/items.ts';
import { facts, factsHeight, WIDE_LABEL_SHARE } from '../../blocks/facts.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { firstRowHeight, photographs } from '../../blocks/photographs.ts';
import { TEXT } from '../../paper.ts';
import type { Sheet } from '../../sheet.ts';
import { remember, type ReportContext } from '../context.ts';

const AFTER_FACTS = 8;
const ITEM_HEADING = { style: TEXT.strong, before: 8, after: 2 } as const;

/** The least of an item that follows its heading on the same page, points. */
const LEAST_OF_ITEM = 50;
/** Most height between the section's heading and the first item's facts: the note of two lines, the item's heading of two. */
const ABOVE_FIRST_ITEM = 2 * TEXT.small.pitch + 4 + ITEM_HEADING.before + 2 * TEXT.strong.pitch + ITEM_HEADING.after;

/** Height that follows an item's heading on the same page: its facts and the first row of its photographs, unless no page could hold them. */
function keptWithItem(sheet: Sheet, item: ItemsPart['items'][number]): number {
  if (item.photographs.length === 0) return LEAST_OF_ITEM;
  const height = factsHeight(sheet, item.facts, sheet.width, WIDE_LABEL_SHARE) + AFTER_FACTS + firstRowHeight(sheet, item.photographs);
  return height + 2 * ABOVE_FIRST_ITEM > sheet.bodyHeight ? LEAST_OF_ITEM : height;
}

export function drawItems(context: ReportContext, part: ItemsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Items received' });
  const [first] = part.items;
  const mark = heading(sheet, section, 'Items received', { keepWith: ABOVE_FIRST_ITEM + (first ? keptWithItem(sheet, first) : 0) });
  remember(context, 'items');
  if (part.items.length === 0) {
    paragraph(sheet, section, 'No item is described.', { style: TEXT.lead });
    return;
  }
  if (part.clientInformation.trim() !== '') paragraph(sheet, section, part.clientInformation, { style: TEXT.small, after: 4 });
  for (const item of part.items) {
    heading(sheet, section, `Item ${item.label}, ${item.kind}`, { level: 3, ...ITEM_HEADING, keepWith: keptWithItem(sheet, item), ...(mark ? { under: mark } : {}) });
    facts(sheet, section, item.facts, sheet.left, sheet.width, WIDE_LABEL_SHARE);
    sheet.y += AFTER_FACTS;
    photographs(sheet, section, item.photographs);
  }
}
