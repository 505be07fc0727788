import { CUSTODY_EVENT_WORDS, type CustodyContent } from '../../app/domain/custody-event.ts';
import { formatCarat, formatGram } from '../../app/domain/weight.ts';

const weightText = (value: number, unit: 'ct' | 'g') => `${unit === 'ct' ? formatCarat(value) : formatGram(value)} ${unit}`;

/** A custody entry as a sentence: "handed over by M. to courier, seal 20931 · 1.02 ct, differs from 1.05 ct". */
export function custodyWords(c: CustodyContent): string {
  const unit = c.weightUnit ?? 'ct';
  const movedTo = c.event === 'moved' && c.to === undefined ? c.place : undefined;
  const to = movedTo ?? c.to;
  const parts = [
    `${CUSTODY_EVENT_WORDS[c.event]}${c.run ? ` in ${c.run}` : ''}${c.from ? ` from ${c.from}` : ''}${to ? ` to ${to}` : ''}`,
    movedTo === undefined ? c.place ?? '' : '',
    c.seal ? `seal ${c.seal}` : '',
    c.weight !== undefined ? weightText(c.weight, unit) : '',
    c.differs && c.expectedWeight !== undefined ? `differs from ${weightText(c.expectedWeight, unit)}` : '',
    c.note ?? '',
  ];
  return parts.filter(Boolean).join(' · ');
}
