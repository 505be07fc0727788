import { METHODS } from '../../domain/method.ts';
import type { ParticularsPart } from '../sections/particulars.ts';
import { localDate, localSpan } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

const lowered = (name: string): string => name.charAt(0).toLocaleLowerCase('en') + name.slice(1);

/** Client and work as facts. */
export function caseParticulars(source: ReportSource): Omit<ParticularsPart, 'section'> {
  const { case: ofCase, laboratory: { zone }, issue, at } = source;
  const runs = source.stones.flatMap((entry) => entry.runs);
  const seen = source.stones.flatMap((entry) => entry.findings.filter((finding) => finding.origin === 'examiner' && finding.state === 'accepted'));
  const methods = [...new Set([...runs, ...seen].map(({ method }) => lowered(METHODS[method].name)))].join('; ');
  const tested = [...runs.map((run) => run.at), ...seen.flatMap((finding) => finding.decidedAt ?? [])];
  return {
    client: [
      { label: 'Client', value: [ofCase.client.name, ofCase.client.address.trim()].filter((text) => text !== '').join('\n'), mono: false },
      { label: 'Case', value: ofCase.number, mono: true },
      { label: 'Client asks', value: ofCase.asks, mono: false },
    ],
    work: [
      { label: 'Received', value: localDate(ofCase.receivedAt, zone), mono: true },
      { label: 'Tested', value: localSpan(tested, zone), mono: true },
      { label: 'Issued', value: issue === null ? 'not issued' : localDate(at, zone), mono: issue !== null },
      ...(methods === '' ? [] : [{ label: 'Methods', value: methods, mono: false }]),
    ],
  };
}
