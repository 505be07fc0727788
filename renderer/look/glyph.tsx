import { CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { CONCLUSION_INK, conclusionStrokes } from '../../app/report/conclusion-glyph.ts';

/** The conclusion's own sign on a rhombus; always beside its word or with a name for readers. */
export function Glyph({ of, size = 16, named = false }: { readonly of: ConclusionId; readonly size?: number; readonly named?: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 16 16" role={named ? 'img' : undefined} aria-hidden={named ? undefined : true} aria-label={named ? CONCLUSION_WORDS[of] : undefined}
      style={{ color: `var(--${CONCLUSION_INK[of]})`, flex: 'none' }}>
      {conclusionStrokes(of).map((s, i) => (
        <path key={i} d={s.d} fill={s.fill ? 'currentColor' : 'none'} stroke={s.fill ? 'none' : 'currentColor'} strokeWidth={1.3} strokeDasharray={s.dash ? '2 1.6' : undefined} />
      ))}
    </svg>
  );
}
