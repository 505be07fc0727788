import { methodGroup } from '../method-group.ts';
import { quoted } from '../sentences.ts';
import { isHeavy } from '../weighed-finding.ts';
import type { NatureCase } from './nature-case.ts';

/** A side is to be taken seriously when it has a strong finding, or supporting ones from two independent methods. */
const isSerious = (one: NatureCase): boolean => one.all.some(isHeavy) || new Set(one.all.map((finding) => methodGroup(finding.method))).size >= 2;

const isDiagnostic = (one: NatureCase): boolean => one.all.some((finding) => finding.strength === 'diagnostic');

/** Both sides are to be taken seriously. A diagnostic finding stands against supporting ones, never against a strong one. */
export function contradicts(natural: NatureCase, grown: NatureCase): boolean {
  if (!isSerious(natural) || !isSerious(grown)) return false;
  if (isDiagnostic(natural) && !grown.all.some(isHeavy)) return false;
  if (isDiagnostic(grown) && !natural.all.some(isHeavy)) return false;
  return true;
}

export const contradictionReasons = (natural: NatureCase, grown: NatureCase): string[] => [
  'The findings contradict each other, and no rule may choose between them.',
  `For natural growth: ${natural.all.map(quoted).join('; ')}.`,
  `For growth in a laboratory: ${grown.all.map(quoted).join('; ')}.`,
];
