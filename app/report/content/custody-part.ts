import type { CustodyView } from '../../contract/cases.ts';
import { CUSTODY_EVENT_WORDS } from '../../domain/custody-event.ts';
import type { CustodyPart } from '../sections/custody.ts';
import { weightText } from './item-part.ts';
import { localTime } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

function whatText({ content }: CustodyView): string {
  const between = content.from !== undefined && content.to !== undefined ? `from ${content.from} to ${content.to}`
    : content.from !== undefined ? `from ${content.from}` : content.to !== undefined ? `to ${content.to}` : '';
  const words = [CUSTODY_EVENT_WORDS[content.event], between, content.place === undefined ? '' : `place ${content.place}`, content.seal === undefined ? '' : `seal ${content.seal}`, content.run ?? '', content.note ?? ''];
  return words.filter((text) => text.trim() !== '').join(', ');
}

function weightCell({ content }: CustodyView): string {
  if (content.weight === undefined || content.weightUnit === undefined) return '';
  return `${weightText(content.weight, content.weightUnit)}${content.differs === true ? ' differs' : ''}`;
}

/** The custody log of the case, in the ledger's order. */
export function custodyParts(source: ReportSource): CustodyPart['entries'] {
  return source.custody.map((entry) => ({
    at: localTime(entry.at, source.laboratory.zone), item: entry.itemLabel, what: whatText(entry), who: entry.person, weight: weightCell(entry), hash: entry.hash,
  }));
}
