import type { ReportModel } from '../../../app/report/report-model.ts';
import type { Element, Sheet } from '../sheet.ts';

/** A place on an earlier page that is filled in when the page number it speaks of is known: the first of `marks` that was drawn. */
export type PagePromise = { readonly onPage: number; readonly x: number; readonly y: number; readonly element: Element; readonly marks: readonly string[] };

/** What the parts of a report share while it is drawn. */
export type ReportContext = {
  readonly model: ReportModel;
  readonly sheet: Sheet;
  /** SHA-256 of the attached report.json; of the model where nothing is enclosed. */
  readonly digest: string;
  /** Whether the report and its raw records are attached. */
  readonly enclosed: boolean;
  /** Whether the file will carry the laboratory's signature. */
  readonly signed: boolean;
  /** Page index on which a section, or the part of one stone in it, begins. */
  readonly pages: Map<string, number>;
  readonly promises: PagePromise[];
};

export const remember = (context: ReportContext, mark: string): void => { context.pages.set(mark, context.sheet.pageIndex); };

/** How the part of a stone in a section is remembered. */
export const stoneMark = (section: 'results' | 'opinions', label: string): string => `${section} ${label}`;
