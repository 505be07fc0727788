import { CUSTODY_EVENT_WORDS, type CustodyContent } from '../domain/custody-event.ts';
import { weightText } from './content/weight-text.ts';
import { dayWords } from './content/local-time.ts';

function photographsWords(photographs: CustodyContent['photographs']): string {
  if (photographs === undefined || photographs.length === 0) return '';
  return photographs.length === 1 ? 'photographed' : `${photographs.length} photographs`;
}

/** What was done, from whom to whom, where and under which seal: "handed over from M. to courier", "out of the house", … */
export function custodyDeed(c: CustodyContent): string[] {
  const movedTo = c.event === 'moved' && c.to === undefined ? c.place : undefined;
  const to = movedTo ?? c.to;
  return [
    `${CUSTODY_EVENT_WORDS[c.event]}${c.run ? ` in ${c.run}` : ''}${c.from ? ` from ${c.from}` : ''}${to ? ` to ${to}` : ''}`,
    c.outside === true ? `out of the house${c.dueBack ? `, expected back by ${dayWords(c.dueBack)}` : ''}` : '',
    c.purpose ? `for ${c.purpose}` : '',
    movedTo === undefined ? c.place ?? '' : '',
    c.seal ? `seal ${c.seal}` : '',
    photographsWords(c.photographs),
  ].filter(Boolean);
}

/** The deed and what was noted of it, for a column that has the weight beside it: "weighed · one stone is missing". */
export const custodyTold = (c: CustodyContent): string => [custodyDeed(c).join(', '), c.note ?? ''].filter(Boolean).join(' · ');

const weightWords = (c: CustodyContent): string => (c.weight === undefined ? '' : weightText(c.weight, c.weightUnit ?? 'ct'));
const differsWords = (c: CustodyContent): string => (c.differs && c.expectedWeight !== undefined ? `differs from ${weightText(c.expectedWeight, c.weightUnit ?? 'ct')}` : '');

/** A weighing as text: "1.0200 ct, differs from 1.0500 ct"; empty where nothing was weighed. */
export const custodyWeighing = (c: CustodyContent): string => [weightWords(c), differsWords(c)].filter(Boolean).join(', ');

/** A custody entry as one line: "handed over from M. to courier · seal 20931 · 1.0200 ct · differs from 1.0500 ct". */
export const custodyWords = (c: CustodyContent): string => [...custodyDeed(c), weightWords(c), differsWords(c), c.note ?? ''].filter(Boolean).join(' · ');
