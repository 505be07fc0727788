import type { ConductPart } from '../../../../app/report/sections/conduct.ts';
import { facts, WIDE_LABEL_SHARE } from '../../blocks/facts.ts';
import { heading } from '../../blocks/heading.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawConduct(context: ReportContext, part: ConductPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Conduct of the work' });
  heading(sheet, section, 'Conduct of the work');
  remember(context, 'conduct');
  const departures = part.departures.length === 0 ? 'none from the protocol that applies, and no instrument was used that was not in order' : part.departures.join('\n');
  facts(sheet, section, [
    ...part.facts, { label: 'Departures', value: departures, mono: false },
    ...part.notApplicable.map((entry) => ({ label: 'Does not apply', value: `${entry.what} (ISO/IEC 17025:2017, ${entry.clause}): ${entry.reason}`, mono: false })),
  ], sheet.left, sheet.width, WIDE_LABEL_SHARE);
}
