import { countWords } from '../../app/report/count-words.ts';
import { Button } from '../look/button.tsx';
import type { Suggestions } from './use-suggestions.ts';

/** What to do with the outlines that were found: take all, take or drop the one that is chosen, or none. */
export function SuggestionPanel({ suggestions, onTake, onTakeAll }: { readonly suggestions: Suggestions; readonly onTake: () => void; readonly onTakeAll: () => void }) {
  return (
    <section className="suggestion-panel" aria-label="Found outlines">
      <p>{countWords(suggestions.found.length, 'outline')} found where the picture is bright. They are proposals: look at each before you take it.</p>
      <div className="row gap4 wrap">
        <Button kind="main" keys="A" onPress={onTakeAll}>Take all</Button><Button keys="Enter" onPress={onTake}>Take this one</Button><Button kind="quiet" keys="Delete" onPress={() => { if (suggestions.chosen) suggestions.drop(suggestions.chosen); }}>Drop it</Button>
        <Button kind="quiet" keys="Escape" onPress={suggestions.dropAll}>Drop all</Button>
      </div>
      <p className="quiet">They become marks without a stone: tie each to its stone, or all in order.</p>
    </section>
  );
}
