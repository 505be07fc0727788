import type { ReferenceLine } from './standard.ts';

/** Lines nearer than this share of the instrument's width can't be parted by it (judgement). */
const BLEND_SHARE = 0.75;

function blend(group: readonly ReferenceLine[]): ReferenceLine {
  if (group.length === 1) return group[0]!;
  const strength = group.reduce((sum, line) => sum + line.strength, 0);
  const position = group.reduce((sum, line) => sum + line.position * line.strength, 0) / strength;
  const spread = group.at(-1)!.position - group[0]!.position;
  // Strengths are rough: the middle of the blend may lie elsewhere by about a sixth of its spread.
  return { position, strength, uncertainty: Math.max(spread / 6, ...group.map((line) => line.uncertainty)) };
}

/** The lines as an instrument of this width (same unit) shows them: neighbours that flow together become one, at their weighted mean. */
export function blendLines(lines: readonly ReferenceLine[], fwhm: number): ReferenceLine[] {
  const sorted = [...lines].sort((a, b) => a.position - b.position);
  const groups: ReferenceLine[][] = [];
  for (const line of sorted) {
    const last = groups.at(-1);
    if (last && line.position - last.at(-1)!.position < BLEND_SHARE * fwhm) last.push(line);
    else groups.push([line]);
  }
  return groups.map(blend);
}
