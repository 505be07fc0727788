import type { ReportModel } from '../report-model.ts';
import { sectionById } from '../sections/index.ts';

/** Statements longer than this are told by their subject alone. */
const QUOTED_UP_TO = 160;

const quoted = (text: string): string => (text.trim() === '' ? 'nothing' : `“${text.trim()}”`);
const isShort = (...texts: readonly string[]): boolean => texts.every((text) => text.length <= QUOTED_UP_TO && !text.includes('\n'));

type Statements = Map<string, string>;

function statementsOf(model: Pick<ReportModel, 'sections'>): Statements {
  return new Map(model.sections.flatMap((part) => sectionById(part.section).lines(part).map((line) => [line.key, line.text] as const)));
}

function sectionChanges(before: ReportModel, after: ReportModel): string[] {
  const had = new Set(before.sections.map((part) => part.section));
  const has = new Set(after.sections.map((part) => part.section));
  const chosen = (id: typeof before.sections[number]['section']): boolean => sectionById(id).composed !== true;
  return [
    ...[...has].filter((id) => !had.has(id) && chosen(id)).map((id) => `The section “${sectionById(id).title}” was added.`),
    ...[...had].filter((id) => !has.has(id) && chosen(id)).map((id) => `The section “${sectionById(id).title}” was left out.`),
  ];
}

function changed(key: string, was: string, is: string): string {
  return isShort(was, is) ? `${key}: ${quoted(was)} became ${quoted(is)}.` : `${key} was worded anew.`;
}

/**
 * What a revision says otherwise than the report it replaces, a sentence each, in the order of the new report; empty where they say the same.
 * Only statements of sections that both have are compared one by one; a section that came or went is one sentence.
 */
export function reportDifference(before: ReportModel, after: ReportModel): string[] {
  const both = (model: ReportModel, other: ReportModel): Statements => statementsOf({ sections: model.sections.filter((part) => other.sections.some((one) => one.section === part.section)) });
  const was = both(before, after);
  const is = both(after, before);
  return [
    ...(before.title === after.title ? [] : [changed('The title', before.title, after.title)]),
    ...(before.client.name === after.client.name ? [] : [changed('The client', before.client.name, after.client.name)]),
    ...sectionChanges(before, after),
    ...[...is].flatMap(([key, text]) => {
      const old = was.get(key);
      if (old === text) return [];
      if (old !== undefined) return [changed(key, old, text)];
      return [isShort(text) ? `${key} is new: ${quoted(text)}.` : `${key} is new.`];
    }),
    ...[...was].flatMap(([key, text]) => (is.has(key) ? [] : [isShort(text) ? `${key} no longer stands; it was ${quoted(text)}.` : `${key} no longer stands.`])),
  ];
}
