import { STRENGTHS } from '../domain/finding.ts';
import { METHOD_IDS } from '../domain/method.ts';
import type { WeighedFinding } from './weighed-finding.ts';

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function compare(a: WeighedFinding, b: WeighedFinding): number {
  return STRENGTHS.indexOf(a.strength) - STRENGTHS.indexOf(b.strength)
    || METHOD_IDS.indexOf(a.method) - METHOD_IDS.indexOf(b.method)
    || compareText(a.code, b.code) || compareText(a.statement, b.statement) || compareText(a.id, b.id);
}

/** Heaviest first, then by method, then by text: the same findings always come in the same order. */
export const sortFindings = (findings: readonly WeighedFinding[]): WeighedFinding[] => [...findings].sort(compare);
