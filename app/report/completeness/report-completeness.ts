import { wasExamined, type ReportSource } from '../content/report-source.ts';
import { lotGaps, opinionGaps } from '../content/opinion-gaps.ts';
import { isSampled } from '../content/conduct-of.ts';
import { decisionRule, statesConformity } from '../content/lot-conformity.ts';
import { sectionOf, type ReportModel } from '../report-model.ts';
import { sectionById, SECTIONS, type SectionId } from '../sections/index.ts';
import { CLAUSES, type Clause, type ClauseKey } from './clauses.ts';

/** How a report stands with one clause. `missing` says what to do, a sentence each; empty where it is met or does not apply. */
export type ClauseState = Clause & { readonly state: 'met' | 'missing' | 'not-applicable'; readonly missing: string[]; /** Where it stands, or why it does not apply. */ readonly where: string };

/** Who may issue the report that is looked at. */
export type Signers = {
  /** Names of those who may issue a report of this kind. */
  readonly mayIssue: readonly string[];
  /** Why the person who is about to issue may not; empty where they may, or where nobody issues yet. */
  readonly refusal: string;
};

type Looked = { readonly source: ReportSource; readonly model: ReportModel; readonly signers: Signers; readonly amends: boolean };

const blank = (text: string | undefined): boolean => text === undefined || text.trim() === '';

const hasLotResults = (source: Pick<ReportSource, 'lots'>): boolean => (source.lots ?? []).some(({ results }) => results.length > 0);

const factOf = (model: ReportModel, label: string): string | undefined => sectionOf(model, 'conduct')?.facts.find((fact) => fact.label === label)?.value;

/** A sentence where no printed section carries the clause. */
function sectionGap(model: ReportModel, clause: Clause): string[] {
  const carriers = SECTIONS.filter((section) => section.clauses.includes(clause.clause) && section.templates.includes(model.subject.kind));
  if (carriers.length === 0 || carriers.some((section) => model.sections.some((part) => part.section === section.id))) return [];
  return [`The section ${carriers.map((section) => `“${section.title}”`).join(' or ')} is left out: tick it.`];
}

/** What is missing beyond the section that carries a clause. */
const CHECKS: Readonly<Partial<Record<ClauseKey, (looked: Looked) => string[]>>> = {
  // ISO/IEC 17025:2017, 7.8.2.1 b and e: name and address of the laboratory, name and contact of the customer.
  laboratory: ({ source }) => (blank(source.laboratory.address) ? ['The laboratory has no address: add it in the house settings.'] : []),
  client: ({ source: { case: { client } } }) => ([client.address, client.email, client.phone].some((text) => !blank(text)) ? [] : [`${client.name} has neither address nor another contact: add one to the client.`]),
  title: ({ model }) => (blank(model.title) ? ['The report has no title.'] : []),
  place: ({ model }) => (sectionOf(model, 'conduct') !== undefined && blank(factOf(model, 'Tests were made')) ? ['It is not said where the tests were made: write it below, or in the laboratory’s texts under House.'] : []),
  items: ({ source }) => (source.stones.length === 0 && source.case.parcels.every((parcel) => parcel.items.length === 0) ? ['Nothing is entered for this report.'] : []),
  tested: ({ source }) => (source.stones.length > 0 && !source.stones.some(wasExamined) && !hasLotResults(source) ? ['No test is recorded: there is no day of testing.'] : []),
  methods: ({ source }) => [
    ...(source.stones.length > 0 && !source.stones.some(wasExamined) && !hasLotResults(source) ? ['No test is recorded: there is no method to name.'] : []),
    ...(source.lots ?? []).filter(({ lot, results }) => results.length > 0 && blank(lot.plan?.content.method)).map(({ lot }) => `It is not said how the stones of lot ${lot.label} were tested: write the method into its plan.`),
  ],
  sampling: ({ source, model }) => (isSampled(source) && blank(factOf(model, 'Sampling')) && (sectionOf(model, 'lots')?.lots ?? []).every((lot) => lot.sampling.length === 0) ? ['Not every stone of what is reported was tested, and it is not said how the tested ones were chosen: write it under Sampling.'] : []),
  results: ({ source, model }) => {
    if (source.stones.length === 0 && !hasLotResults(source)) return ['No stone is entered for this case: a report needs at least one, or a lot with results.'];
    // Either section carries the clause, and each only its own results.
    const stonesGap = source.stones.length > 0 && sectionById('results').templates.includes(model.subject.kind) && sectionOf(model, 'results') === undefined && sectionOf(model, 'lots') !== undefined;
    return [
      ...(stonesGap ? ['The section “Results” is left out, and stones of their own folder were tested: tick it.'] : []),
      ...(hasLotResults(source) && sectionOf(model, 'lots') === undefined && sectionOf(model, 'results') !== undefined ? ['The section “Lots of small stones” is left out, and a lot has results: tick it.'] : []),
    ];
  },
  external: ({ model }) => (sectionOf(model, 'conduct') !== undefined && blank(factOf(model, 'From others')) ? ['It is not said whether results come from outside: write it under From others.'] : []),
  'client-information': ({ model }) => (sectionOf(model, 'items') !== undefined && blank(sectionOf(model, 'items')?.clientInformation) ? ['The text on the client’s statements is empty: write it under House.'] : []),
  conditions: ({ model }) => (sectionOf(model, 'conduct') !== undefined && blank(factOf(model, 'Conditions')) ? ['The conditions of the tests are not said: write them under Conditions.'] : []),
  uncertainty: ({ source }) => (blank(source.texts.uncertainty.text) ? ['The laboratory has no text on uncertainty: write it under House.'] : []),
  conformity: ({ source }) => (decisionRule(source).length === 0 ? ['The laboratory has no text on its decision rule: write it under House.'] : []),
  relates: ({ source }) => (blank(source.texts.scope.text) ? ['The laboratory has not written down the scope of its screening: write it under House.'] : []),
  opinions: ({ source }) => [...opinionGaps(source), ...lotGaps(source)],
  authorised: ({ signers }) => [
    ...(signers.mayIssue.length === 0 ? ['Nobody is authorised to issue a report of this kind: the manager writes down who is, under House.'] : []),
    ...(signers.refusal === '' ? [] : [signers.refusal]),
  ],
  amendment: ({ model, amends }) => {
    const part = sectionOf(model, 'amendment');
    if (!amends || part === undefined) return [];
    return [
      ...(blank(part.reason) ? ['Write why the report is amended.'] : []),
      ...(part.changes.length === 0 ? ['Nothing differs from the report it would replace: there is nothing to amend.'] : []),
    ];
  },
};

/** What needs no look: the printer sees to it, or it can't apply. */
const ALWAYS: Readonly<Partial<Record<ClauseKey, string>>> = {
  identity: 'on every page and after the last line', issued: 'on page 1, on the day of issue', relates: 'on page 1 and under Scope and limits',
  'sampling-report': 'items are reported as received; the laboratory did not sample outside',
};

function whereOf(model: ReportModel, clause: Clause): string {
  const always = ALWAYS[clause.key as ClauseKey];
  if (always !== undefined) return always;
  const titles = model.sections.filter((part) => sectionById(part.section).clauses.includes(clause.clause)).map((part: { section: SectionId }) => sectionById(part.section).title);
  return titles.length === 0 ? 'on page 1' : [...new Set(titles)].join(', ');
}

/** A dot or a dash is no reason. */
const saysWhy = (reason: string): boolean => /\p{L}{3}/u.test(reason);

function stateOf(clause: Clause, looked: Looked): ClauseState {
  const judged = clause.key === 'conformity' && statesConformity(looked.source);
  const reason = clause.mayNotApply && !judged ? looked.source.writing.notApplicable[clause.key]?.trim() ?? '' : '';
  if (clause.key === 'amendment' && !looked.amends) return { ...clause, state: 'not-applicable', missing: [], where: 'this is no amendment' };
  if (clause.key === 'sampling-report' || (clause.key === 'sampling' && !isSampled(looked.source))) {
    return { ...clause, state: 'not-applicable', missing: [], where: clause.key === 'sampling' ? 'every stone described was tested' : whereOf(looked.model, clause) };
  }
  if (saysWhy(reason)) return { ...clause, state: 'not-applicable', missing: [], where: reason };
  const missing = [...(reason === '' ? [] : [`“${reason}” does not say why this does not apply: write it in words.`]), ...(clause.key === 'amendment' ? [] : sectionGap(looked.model, clause)), ...CHECKS[clause.key as ClauseKey]?.(looked) ?? []];
  return { ...clause, state: missing.length === 0 ? 'met' : 'missing', missing, where: missing.length === 0 ? whereOf(looked.model, clause) : '' };
}

/** How a report stands with ISO/IEC 17025:2017, 7.8.2 to 7.8.8, in the order of the standard. It may be issued when nothing is missing. */
export const reportCompleteness = (looked: Looked): ClauseState[] => CLAUSES.map((clause) => stateOf(clause, looked));
