import type { Failure } from '../../app/contract/failure.ts';
import type { WordRemark } from '../../app/report/draft/draft-words.ts';
import { err, ok, type Result } from '../../app/result.ts';

/** What a person said of words that should not stand in a report and are to stand all the same. */
export type StandingWords = { readonly words: readonly string[]; readonly reason: string };

/** Stands in the audit entry of an issued report. */
export type KeptWords = { readonly reason: string; readonly words: readonly { readonly field: string; readonly word: string; readonly source: string }[] };

/** Listed in a sentence; the others are beside their fields. */
const NAMED = 3;

function sentence(words: readonly WordRemark[]): string {
  const named = words.slice(0, NAMED).map(({ word, field, source }) => `“${word}” (${field}; ${source})`).join(', ');
  const more = words.length > NAMED ? ` and ${words.length - NAMED} more` : '';
  return `By the rules of naming ${words.length === 1 ? 'a word' : 'words'} should not stand in this report: ${named}${more}.`;
}

/** What is kept of words that stand in a report, or null where none does. Refuses where one stands that nobody answered for. */
export function answeredFor(words: readonly WordRemark[], standing: StandingWords | null): Result<KeptWords | null, Failure> {
  if (words.length === 0) return ok(null);
  const known = new Set(standing?.words);
  const open = words.filter(({ word }) => !known.has(word));
  if (standing === null || open.length > 0) {
    return err({ code: 'refused', message: sentence(standing === null ? words : open), next: 'Word it otherwise; or, in the report builder, say when issuing it why the words are to stand.' });
  }
  return ok({ reason: standing.reason, words: words.map(({ field, word, source }) => ({ field, word, source })) });
}
