import type { Strength, Supports } from '../../domain/finding.ts';
import { grades } from '../hypothesis.ts';
import type { Grades, HypothesisId } from '../hypothesis.ts';

/** One observation and what it says of each hypothesis. */
export type EvidenceRow = {
  /** Stable word, stored with a conclusion. */
  readonly id: string;
  /** Codes of the findings that mean this; a star at the end stands for any ending. */
  readonly codes: readonly string[];
  /** The observation in a few words. */
  readonly says: string;
  readonly grades: Grades;
  /** What the grades come to in one word, and the most it may weigh there, whoever recorded it. */
  readonly supports: Supports;
  readonly most: Strength;
  /** Where the grades come from. */
  readonly source: string;
  /** Cells that rest on another source than the row. */
  readonly cellSources?: Partial<Readonly<Record<HypothesisId, string>>>;
  /** The counter-example or trap. */
  readonly caution: string;
};

type Entry = Omit<EvidenceRow, 'grades'> & { readonly grades: string };

export const evidenceRow = (entry: Entry): EvidenceRow => ({ ...entry, grades: grades(entry.grades) });
