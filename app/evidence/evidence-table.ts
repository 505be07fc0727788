import { IDENTITY_ROWS } from './table/identity-rows.ts';
import { INFRARED_ROWS } from './table/infrared-rows.ts';
import { LINE_ROWS } from './table/line-rows.ts';
import { OBSERVED_ROWS } from './table/observed-rows.ts';
import type { EvidenceRow } from './table/evidence-row.ts';
import type { HypothesisId } from './hypothesis.ts';

export type { EvidenceRow } from './table/evidence-row.ts';

/** Version of the table; a conclusion stores the one it was made with. Raise it with every change of a grade, a cap or a code. */
export const EVIDENCE_TABLE_VERSION = 'evidence table 2026.3';

/** What a person writes in their own words: it says what it says, is never diagnostic, and has no grades of its own. */
const OWN_WORDS = /^(own|examiner)\b/;

/**
 * Observation × hypothesis. Grades are judgement on the cited literature; each row names its counter-example.
 * Sources stand with the row and, where they differ, with the cell (sourceOfCell).
 */
export const EVIDENCE_TABLE: readonly EvidenceRow[] = [...IDENTITY_ROWS, ...LINE_ROWS, ...INFRARED_ROWS, ...OBSERVED_ROWS];

const EXACT: ReadonlyMap<string, EvidenceRow> = new Map(EVIDENCE_TABLE.flatMap((row) => row.codes.filter((code) => !code.endsWith('*')).map((code) => [code, row])));
const OPEN: readonly (readonly [string, EvidenceRow])[] = EVIDENCE_TABLE.flatMap((row) => row.codes.filter((code) => code.endsWith('*')).map((code) => [code.slice(0, -1), row] as const));

/** The row that a finding's code means: the exact one, else one with an open end; undefined for a code the table does not know. */
export const evidenceRowOf = (code: string): EvidenceRow | undefined => EXACT.get(code) ?? OPEN.find(([start]) => code.startsWith(start))?.[1];

export const isOwnWords = (code: string): boolean => OWN_WORDS.test(code);

/** Where the grade in one cell comes from. */
export const sourceOfCell = (row: EvidenceRow, hypothesis: HypothesisId): string => row.cellSources?.[hypothesis] ?? row.source;
