import { CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { CONCLUSION_GLYPHS, GLYPH_BOX, GLYPH_DASH, GLYPH_STROKE } from '../../app/report/conclusion-glyph.ts';

/** The conclusion's own sign on a rhombus; always beside its word or with a name for readers. */
export function Glyph({ of, size = GLYPH_BOX, named = false }: { readonly of: ConclusionId; readonly size?: number; readonly named?: boolean }) {
  const glyph = CONCLUSION_GLYPHS[of];
  return (
    <svg width={size} height={size} viewBox={`0 0 ${GLYPH_BOX} ${GLYPH_BOX}`} role={named ? 'img' : undefined} aria-hidden={named ? undefined : true}
      aria-label={named ? CONCLUSION_WORDS[of] : undefined} style={{ color: `var(--${glyph.ink})`, flex: 'none' }}>
      {glyph.parts.map((part) => (
        <path key={part.d + String(part.fill)} d={part.d} fill={part.fill ? 'currentColor' : 'none'} stroke={part.fill ? 'none' : 'currentColor'}
          strokeWidth={GLYPH_STROKE} strokeDasharray={part.dashed ? GLYPH_DASH.join(' ') : undefined} />
      ))}
    </svg>
  );
}
