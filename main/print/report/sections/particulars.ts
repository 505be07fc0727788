import { sectionOf } from '../../../../app/report/report-model.ts';
import type { ReportFact } from '../../../../app/report/fact.ts';
import type { ParticularsPart } from '../../../../app/report/sections/particulars.ts';
import { factColumns } from '../../blocks/facts.ts';
import { remember, type ReportContext } from '../context.ts';

/** A list this long still stands in a fact; a longer one is told in its own section. */
const LONGEST_LIST = 110;

/** The names of what was not done, without the reasons that follow a colon: those stand with the results. */
function notTested(notDone: readonly string[]): ReportFact[] {
  if (notDone.length === 0) return [];
  const text = notDone.map((entry) => entry.split(':')[0]!.trim()).join('; ');
  return [{ label: 'Not tested', value: text.length <= LONGEST_LIST ? text : `${notDone.length} tests, named with the results`, mono: false }];
}

/** Client and work side by side; the facts of the only stone of a report stand above the client. */
export function drawParticulars(context: ReportContext, part: ParticularsPart): void {
  const { model, sheet } = context;
  const stones = sectionOf(model, 'results')?.stones ?? [];
  const only = stones.length === 1 ? stones[0] : undefined;
  remember(context, 'particulars');
  sheet.ensure(80);
  sheet.bookmark('Client and work');
  factColumns(sheet, sheet.child(sheet.root, 'Sect', { title: 'Client and work' }), [
    [...(only === undefined ? [] : [{ heading: 'The stone', facts: only.facts }]), { heading: 'The client', facts: part.client }],
    [{ heading: 'The work', facts: [...part.work, ...notTested(only?.notDone ?? [])] }],
  ]);
}
