import { EVIDENCE_TABLE_VERSION } from '../evidence/evidence-table.ts';
import { RULES_VERSION } from '../evidence/proposal.ts';
import { TABLES_VERSION } from '../reference/optical-centres.ts';
import { tallyText } from './evaluation-text.ts';
import { inOrder } from './run-part.ts';
import type { PartResult } from './run-part.ts';
import { tally } from './tally.ts';
import type { Tally } from './tally.ts';
import { targetsOf } from './targets.ts';
import type { Target } from './targets.ts';

export type EvaluationReport = {
  readonly seed: number;
  readonly versions: { readonly rules: string; readonly table: string; readonly tables: string };
  /** Stones whose findings were drawn from documented chances. */
  readonly sampled: Tally;
  /** Stones whose curves were simulated and analysed. */
  readonly measured: Tally;
  /** Judged on both together; the second on the sampled ones, of which there are many. */
  readonly targets: readonly Target[];
};

export function evaluationReport(seed: number, parts: readonly PartResult[]): EvaluationReport {
  const sampled = inOrder(parts.map((part) => part.sampled));
  const measured = inOrder(parts.map((part) => part.measured));
  const drawn = tally(sampled);
  return {
    seed, versions: { rules: RULES_VERSION, table: EVIDENCE_TABLE_VERSION, tables: TABLES_VERSION }, sampled: drawn, measured: tally(measured),
    targets: targetsOf({ falseNatural: tally([...sampled, ...measured]).falseNatural, looseNaturalIa: drawn.looseNaturalIa }),
  };
}

/** The report for a person to read. */
export function reportText({ seed, versions, sampled, measured, targets }: EvaluationReport): string {
  return [
    `Made-up stones, seed ${seed}. ${versions.rules}, ${versions.table}, ${versions.tables}. No stone here is real; the chances are those of the literature named with each kind, and judgement.`, '',
    tallyText(`${sampled.stones} stones with findings drawn from documented chances`, sampled),
    tallyText(`${measured.stones} stones through simulated curves and the program’s own analysis`, measured),
    'Targets', ...targets.map(({ asks, met, found }) => `  ${met ? 'met    ' : 'NOT MET'}  ${asks}: ${found}`), '',
  ].join('\n');
}
