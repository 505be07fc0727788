import type { ReportModel } from '../../../app/report/report-model.ts';
import type { Element, Sheet } from '../sheet.ts';

export type Stone = ReportModel['stones'][number];

/** A place on an earlier page that is filled in when the page number it speaks of is known. */
export type PagePromise = { readonly onPage: number; readonly x: number; readonly y: number; readonly element: Element; readonly stone: number };

/** What the parts of a report share while it is drawn. */
export type ReportContext = {
  readonly model: ReportModel;
  readonly sheet: Sheet;
  readonly digest: string;
  /** Page index on which a section or stone begins. */
  readonly pages: Map<string, number>;
  readonly promises: PagePromise[];
};

export const remember = (context: ReportContext, section: string): void => { context.pages.set(section, context.sheet.pageIndex); };
