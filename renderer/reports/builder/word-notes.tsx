import type { WordRemark } from '../../../app/contract/report-drafts.ts';

/** Words in a field that should not stand there: which, why, and by whose rule. */
export function WordNotes({ words, field }: { readonly words: readonly WordRemark[]; readonly field: string }) {
  const here = words.filter((word) => word.field === field);
  if (here.length === 0) return null;
  return (
    <ul className="word-notes" aria-label="Words to look at again">
      {here.map((word) => <li key={`${word.index} ${word.word}`}><strong>{word.word}</strong>: {word.why} <span className="quiet">{word.source}</span></li>)}
    </ul>
  );
}
