import type { MethodId } from '../domain/method.ts';
import type { WeighedFinding } from './weighed-finding.ts';

/** Methods as they stand inside a sentence. */
export const METHOD_WORDS: Readonly<Record<MethodId, string>> = {
  raman: 'Raman', photoluminescence: 'photoluminescence', absorption: 'absorption', infrared: 'infrared', 'ultraviolet-transmission': 'ultraviolet transmission',
  'fluorescence-long-wave': 'long-wave fluorescence', 'fluorescence-short-wave': 'short-wave fluorescence', phosphorescence: 'phosphorescence',
  'growth-pattern': 'growth pattern', 'crossed-polarisers': 'crossed polarisers', magnet: 'magnet', microscopy: 'microscopy',
  'thermal-probe': 'thermal probe', 'electrical-conductivity': 'electrical conductivity', 'specific-gravity': 'specific gravity', 'refractive-index': 'refractive index',
};

/** 'a', 'a and b', 'a, b and c'; or with another last word. */
export function listed(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Where a finding comes from: 'growth pattern, R6'. */
export const cited = (finding: WeighedFinding): string => `${METHOD_WORDS[finding.method]}${finding.run === null ? '' : `, ${finding.run}`}`;

/** A finding as it is quoted: its sentence, then method and run. */
export function quoted(finding: WeighedFinding): string {
  const sentence = finding.statement.trim().replace(/[.\s]+$/, '');
  return `${sentence} (${cited(finding)})`;
}

const SUPPORT_WORDS: Readonly<Record<WeighedFinding['supports'], string>> = {
  diamond: 'diamond', 'not-diamond': 'an imitation', natural: 'natural growth', grown: 'growth in a laboratory', 'grown-cvd': 'CVD growth',
  'grown-hpht': 'HPHT growth', treatment: 'treatment', none: '',
};
const STRENGTH_WORDS: Readonly<Record<WeighedFinding['strength'], string>> = { diagnostic: 'Diagnostic of', strong: 'Strong for', supporting: 'Supports', neutral: '' };

/** A finding with its weight, as it stands among the reasons: 'Strong for natural growth: …'. */
export const weighed = (finding: WeighedFinding): string =>
  finding.strength === 'neutral' ? `Recorded, without weight of its own: ${quoted(finding)}.` : `${STRENGTH_WORDS[finding.strength]} ${SUPPORT_WORDS[finding.supports]}: ${quoted(finding)}.`;
