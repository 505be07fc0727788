import { useState } from 'react';
import type { Outline } from '../../app/images/photograph.ts';
import { freshOutlines } from '../../app/piece/edit-marks.ts';
import type { Mark } from '../../app/piece/mark.ts';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';

export type Suggestion = Outline & { readonly id: string };

/** Outlines that the program found in a photograph and nobody has taken yet. They belong to no record until they are marks. */
export function useSuggestions(photographId: string | null, marks: readonly Mark[], aspect: number) {
  const [found, setFound] = useState<readonly Suggestion[]>([]);
  const [chosen, setChosen] = useState<string | null>(null);
  const suggest = useChange('images.suggestOutlines');
  const notes = useNotes();
  const ask = () => {
    if (photographId === null || suggest.isPending) return;
    suggest.mutate({ photographId }, {
      onSuccess: (outlines) => {
        const fresh = freshOutlines(marks, outlines, aspect).map((outline) => ({ ...outline, id: crypto.randomUUID() }));
        setFound(fresh);
        setChosen(fresh[0]?.id ?? null);
        if (fresh.length > 0) return;
        notes.say(outlines.length > 0 ? 'Every outline that was found lies on a mark already.' : 'No bright outline was found. Place the marks by hand, or try the photograph under ultraviolet light.');
      },
      onError: (e) => { notes.complain(e.failure); },
    });
  };
  const drop = (id: string) => {
    const at = found.findIndex((one) => one.id === id);
    const rest = found.filter((one) => one.id !== id);
    setFound(rest);
    setChosen(rest[Math.min(at, rest.length - 1)]?.id ?? null);
  };
  return { found, chosen, asking: suggest.isPending, ask, drop, choose: setChosen, dropAll: () => { setFound([]); setChosen(null); } };
}
export type Suggestions = ReturnType<typeof useSuggestions>;
