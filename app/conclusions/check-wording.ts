import { checkNomenclature, type Jurisdiction } from '../report/nomenclature.ts';
import { err, ok, type Result } from '../result.ts';

export type WordingRefusal = { readonly code: 'invalid-input'; readonly message: string; readonly next: string; readonly field: string };

/**
 * Refuses words that must not stand in a report, in texts that will be printed as they are.
 * @param texts the text of each field, by the field's name
 * @param readers where the readers of the house's reports live
 */
export function checkWording(texts: Readonly<Record<string, string>>, readers: Jurisdiction): Result<null, WordingRefusal> {
  for (const [field, text] of Object.entries(texts)) {
    const remark = checkNomenclature(text, readers)[0];
    if (remark !== undefined) {
      return err({ code: 'invalid-input', field, message: `“${remark.word}” can’t stand in a report: ${remark.why}`, next: `Put it in other words (${remark.source}).` });
    }
  }
  return ok(null);
}
