import type { ReportSource } from '../content/report-source.ts';
import { writtenTexts, type WrittenText } from '../content/written-texts.ts';
import { checkNomenclature } from '../nomenclature.ts';
import type { DraftContent } from './draft-content.ts';
import { STATEMENT_KINDS } from './statement-kinds.ts';

/** `elsewhere`: it stands in a text that the draft does not hold, and is changed where that text is kept. */
export type WordRemark = { readonly field: string; readonly word: string; readonly why: string; readonly source: string; readonly index: number; readonly elsewhere: boolean };

function textsOf(content: DraftContent): WrittenText[] {
  return [
    { field: 'title', text: content.title }, { field: 'remarks', text: content.remarks }, { field: 'reason', text: content.reason },
    ...STATEMENT_KINDS.map((kind) => ({ field: kind, text: content.statements[kind] })),
    ...Object.entries(content.notApplicable).map(([key, text]) => ({ field: `clause ${key}`, text })),
  ];
}

/** Words that should not stand in the report, in what was written for it and in what it prints beside. Names of client and laboratory are left alone: they may be called anything. */
export function draftWords(content: DraftContent, source: ReportSource): WordRemark[] {
  const { laboratory } = source;
  const names = [source.case.client.name, laboratory.name];
  const remarks = ({ field, text }: WrittenText, elsewhere: boolean): WordRemark[] => checkNomenclature(text, laboratory.settings.readers, names).map((remark) => ({ field, ...remark, elsewhere }));
  return [...textsOf(content).flatMap((text) => remarks(text, false)), ...writtenTexts(source).flatMap((text) => remarks(text, true))];
}
