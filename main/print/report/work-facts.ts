import type { ReportModel } from '../../../app/report/report-model.ts';
import type { Fact } from '../blocks/facts.ts';

/** A list this long still stands in a fact; a longer one is told in its own section. */
const LONGEST_LIST = 110;

const methodsOf = (model: ReportModel): string => {
  const names = new Set(model.stones.flatMap((stone) => stone.findings.map((finding) => finding.method)));
  return Array.from(names, (name) => name.charAt(0).toLocaleLowerCase('en') + name.slice(1)).join('; ');
};

/** The names of what was not done, without the reasons that follow a colon: those stand below. */
function notTested(model: ReportModel): Fact[] {
  const only = model.stones.length === 1 ? model.stones[0]!.notDone : [];
  if (only.length === 0) return [];
  const text = only.map((entry) => entry.split(':')[0]!.trim()).join('; ');
  return [{ label: 'Not tested', value: text.length <= LONGEST_LIST ? text : `${only.length} tests, named below`, mono: false }];
}

/** For whom. */
export function clientFacts(model: ReportModel): Fact[] {
  return [
    { label: 'Client', value: [model.client.name, model.client.address.trim()].filter((text) => text !== '').join('\n'), mono: false },
    { label: 'Case', value: model.caseNumber, mono: true },
    { label: 'Client asks', value: model.asks, mono: false },
  ];
}

/** When and how: the facts that concern the work and not one stone. */
export function workFacts(model: ReportModel): Fact[] {
  const methods = methodsOf(model);
  return [
    { label: 'Received', value: model.received, mono: true },
    { label: 'Tested', value: model.tested, mono: true },
    { label: 'Issued', value: model.draft ? 'not issued' : model.issued, mono: !model.draft },
    ...(methods === '' ? [] : [{ label: 'Methods', value: methods, mono: false }]),
    ...notTested(model),
  ];
}
