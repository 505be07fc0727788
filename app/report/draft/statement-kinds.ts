/** What a report may say of its own where the laboratory's text does not fit. */
export const STATEMENT_KINDS = ['place', 'conditions', 'sampling', 'external'] as const;
export type StatementKind = (typeof STATEMENT_KINDS)[number];
