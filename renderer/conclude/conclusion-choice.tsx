import { CONCLUSION_IDS, CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { Glyph } from '../look/glyph.tsx';

/** The seven conclusions with their signs. Digits 1 to 7 choose, arrows move. */
export function ConclusionChoice({ value, proposed, onChange }: { readonly value: ConclusionId; readonly proposed: ConclusionId; readonly onChange: (value: ConclusionId) => void }) {
  const focusOn = (group: HTMLElement, id: ConclusionId) => { group.querySelector<HTMLElement>(`[data-conclusion="${id}"]`)?.focus(); };
  return (
    <div role="radiogroup" aria-label="Conclusion" className="conclusions" onKeyDown={(event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const byDigit = CONCLUSION_IDS[Number(event.key) - 1];
      const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
      const next = byDigit ?? (step === undefined ? undefined : CONCLUSION_IDS[(CONCLUSION_IDS.indexOf(value) + step + CONCLUSION_IDS.length) % CONCLUSION_IDS.length]);
      if (next === undefined) return;
      event.preventDefault();
      onChange(next);
      focusOn(event.currentTarget, next);
    }}>
      {CONCLUSION_IDS.map((id, i) => (
        <button key={id} type="button" role="radio" aria-checked={id === value} data-conclusion={id} tabIndex={id === value ? 0 : -1} onClick={() => { onChange(id); }}>
          <kbd className="keys" aria-hidden="true">{i + 1}</kbd><Glyph of={id} /><span>{CONCLUSION_WORDS[id]}</span>{id === proposed ? <span className="quiet">proposed</span> : null}
        </button>
      ))}
    </div>
  );
}
