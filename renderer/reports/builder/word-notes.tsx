import type { WordRemark } from '../../../app/contract/report-drafts.ts';

/** Words in a field that should not stand there: which, why, and by whose rule. */
export function WordNotes({ words, field }: { readonly words: readonly WordRemark[]; readonly field: string }) {
  const here = words.filter((word) => word.field === field);
  return here.length === 0 ? null : <WordList words={here} />;
}

/** Words that should not stand where they do: which, why, and by whose rule. */
export function WordList({ words }: { readonly words: readonly WordRemark[] }) {
  return (
    <ul className="word-notes" aria-label="Words to look at again">
      {words.map((word) => <li key={`${word.field} ${word.index} ${word.word}`}><strong>{word.word}</strong>{word.elsewhere ? ` (${word.field})` : ''}: {word.why} <span className="quiet">{word.source}</span></li>)}
    </ul>
  );
}
