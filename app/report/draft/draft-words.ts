import { checkNomenclature } from '../nomenclature.ts';
import type { DraftContent } from './draft-content.ts';
import { STATEMENT_KINDS } from './statement-kinds.ts';

export type WordRemark = { readonly field: string; readonly word: string; readonly why: string; readonly source: string; readonly index: number };

/** Words in what was written for a report that should not stand there. `names` are left alone: a client may be called anything. */
export function draftWords(content: DraftContent, names: readonly string[]): WordRemark[] {
  const texts: (readonly [string, string])[] = [
    ['title', content.title], ['remarks', content.remarks], ['reason', content.reason],
    ...STATEMENT_KINDS.map((kind) => [kind, content.statements[kind]] as const),
    ...Object.entries(content.notApplicable).map(([key, reason]) => [`clause ${key}`, reason] as const),
  ];
  return texts.flatMap(([field, text]) => checkNomenclature(text, 'international', names).map((remark) => ({ field, ...remark })));
}
