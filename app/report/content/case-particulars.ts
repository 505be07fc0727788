import { METHODS } from '../../domain/method.ts';
import type { ParticularsPart } from '../sections/particulars.ts';
import { localDate, localSpan } from './local-time.ts';
import type { ReportSource } from './report-source.ts';

const lowered = (name: string): string => name.charAt(0).toLocaleLowerCase('en') + name.slice(1);

/** How the client is reached (ISO/IEC 17025:2017, 7.8.2.1 e): by the address where there is one, else by what else was written down. */
export function clientContact({ address, email, phone }: ReportSource['case']['client']): string {
  const stated = [address, email, phone].map((text) => text.trim());
  return stated[0] !== '' ? stated[0]! : stated.filter((text) => text !== '').join('\n');
}

/** Client and work as facts. */
export function caseParticulars(source: ReportSource): Omit<ParticularsPart, 'section'> {
  const { case: ofCase, laboratory: { zone }, issue, at } = source;
  const runs = source.stones.flatMap((entry) => entry.runs);
  const seen = source.stones.flatMap((entry) => entry.findings.filter((finding) => finding.origin === 'examiner' && finding.state === 'accepted'));
  // The stones of a lot have no runs: how they were tested stands with its plan, and when with each result.
  const ofLots = (source.lots ?? []).filter(({ results }) => results.length > 0);
  const methods = [...new Set([...[...runs, ...seen].map(({ method }) => lowered(METHODS[method].name)), ...ofLots.flatMap(({ lot }) => lot.plan?.content.method || [])])].join('; ');
  const tested = [...runs.map((run) => run.at), ...seen.flatMap((finding) => finding.decidedAt ?? []), ...ofLots.flatMap(({ results }) => results.map(({ at }) => at))];
  return {
    client: [
      { label: 'Client', value: [ofCase.client.name, clientContact(ofCase.client)].filter((text) => text !== '').join('\n'), mono: false },
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
