import type { TemplateDesk } from '../../../app/contract/report-house.ts';
import type { SectionChoice } from '../../../app/report/templates/template.ts';

/** Clauses of ISO/IEC 17025:2017 that no ticked section holds although one that is left out does, each with that section: every report would have to give the reason. */
export function leftOutClauses(chosen: SectionChoice, sections: TemplateDesk['sections']): { clause: string; section: string }[] {
  const of = (on: boolean) => chosen.filter((entry) => entry.on === on).flatMap((entry) => sections.find((one) => one.id === entry.id) ?? []);
  const held = new Set(of(true).flatMap((section) => section.clauses));
  return of(false).flatMap((section) => section.clauses.filter((clause) => !held.has(clause)).map((clause) => ({ clause, section: section.title })));
}
