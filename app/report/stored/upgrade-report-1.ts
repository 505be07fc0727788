import type { ReportModel } from '../report-model.ts';
import { findingNumber } from '../content/stone-result.ts';
import { TEXT_KIND_INFO } from '../texts/text-kinds.ts';
import type { ReportModel1 } from './report-model-1.ts';

/** The content of an early report in the form of today, for lists, comparison and reading. Its pages are stored and never drawn from this. */
export function upgradeReport1(old: ReportModel1): ReportModel {
  const { language, demonstration, draft, number, revision, title, pageSize, laboratory, client, caseNumber, issued, issuedAt } = old;
  const single = old.stones.length === 1;
  return {
    schema: 'culet-report-2', language, demonstration, draft, number, revision, title, pageSize, laboratory, client, caseNumber, issued, issuedAt, template: null, texts: [],
    subject: { kind: single ? 'single-stone' : 'case', label: caseNumber, stones: old.stones.length },
    sections: [
      ...(single ? [] : [{ section: 'overview' as const, figure: null, stones: old.stones.map(({ label, heading, conclusion }) => ({ label, heading, opinion: conclusion === null ? null : { id: conclusion.id, words: conclusion.words } })) }]),
      { section: 'opinions', stones: old.stones.map((stone) => ({
        label: stone.label, heading: stone.heading, conclusion: stone.conclusion,
        weights: stone.findings.map(({ says, strength, supports, counts }, index) => ({ finding: findingNumber(index), says, strength, supports, counts })),
      })) },
      { section: 'particulars',
        client: [
          { label: 'Client', value: [client.name, client.address.trim()].filter((text) => text !== '').join('\n'), mono: false },
          { label: 'Case', value: caseNumber, mono: true }, { label: 'Client asks', value: old.asks, mono: false },
        ],
        work: [
          { label: 'Received', value: old.received, mono: true }, { label: 'Tested', value: old.tested, mono: true },
          { label: 'Issued', value: draft ? 'not issued' : issued, mono: !draft },
        ] },
      { section: 'results', stones: old.stones.map(({ label, heading, facts, figures, findings, setAside, notDone }) => ({
        label, heading, facts, figures, setAside, notDone,
        findings: findings.map(({ run, method, statement, caution }, index) => ({ no: findingNumber(index), run, method, statement, caution })),
      })) },
      { section: 'methods', instruments: old.instruments, texts: [] },
      { section: 'limits', scope: old.scope, limits: old.limits, disclaimer: [] },
      { section: 'signatures', signatures: old.signatures },
      { section: 'items', clientInformation: TEXT_KIND_INFO['client-information'].supplied, items: old.items },
      { section: 'custody', entries: old.custody },
      { section: 'raw-records', records: old.rawRecords },
    ],
  };
}
