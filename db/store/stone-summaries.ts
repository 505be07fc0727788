import type { StoneSummary } from '../../app/contract/cases.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

export type StoneSummaryRow = {
  id: string; label: string; item_id: string; mounted: number; position: string; shape: string; weight: number | null; measurements: string;
  colour_class: string; runs: number; conclusion: string | null; agrees: number | null;
};

/** Columns of a stone's summary for `stone s` joined by STONE_SUMMARY_JOINS. */
export const STONE_SUMMARY_COLUMNS = `s.id, s.label, s.item_id, s.mounted, s.position, s.shape, s.weight, s.measurements, s.colour_class,
  (SELECT count(*) FROM test_run r WHERE r.stone_id = s.id) AS runs, c.conclusion, f.agrees`;

/** The newest conclusion of each stone, and what the second person said to it. */
export const STONE_SUMMARY_JOINS = `
  LEFT JOIN conclusion c ON c.stone_id = s.id AND c.ordinal = (SELECT max(ordinal) FROM conclusion k WHERE k.stone_id = s.id)
  LEFT JOIN confirmation f ON f.conclusion_id = c.id`;

function stageOf(row: StoneSummaryRow): StoneSummary['stage'] {
  if (row.conclusion === null) return 'open';
  if (row.agrees === null) return 'concluded';
  return row.agrees === 1 ? 'confirmed' : 'disagreed';
}

export const summaryOf = (row: StoneSummaryRow): StoneSummary => ({
  id: row.id, label: row.label, itemId: row.item_id, mounted: row.mounted === 1, position: row.position, shape: row.shape, weight: row.weight,
  measurements: row.measurements, colourClass: row.colour_class as StoneSummary['colourClass'], runs: row.runs,
  conclusion: row.conclusion as StoneSummary['conclusion'], stage: stageOf(row),
});

/** Summary of one stone, or null. */
export function stoneSummary(db: ReadDb | WriteTx, stoneId: string): StoneSummary | null {
  const row = db.get<StoneSummaryRow>(`SELECT ${STONE_SUMMARY_COLUMNS} FROM stone s ${STONE_SUMMARY_JOINS} WHERE s.id = ?`, [stoneId]);
  return row ? summaryOf(row) : null;
}

/** Summaries of all stones of a case, in the order of items and of stones within them. */
export function stoneSummariesOfCase(db: ReadDb | WriteTx, caseId: string): StoneSummary[] {
  return db.all<StoneSummaryRow>(
    `SELECT ${STONE_SUMMARY_COLUMNS} FROM stone s ${STONE_SUMMARY_JOINS} WHERE s.case_id = ? ORDER BY s.item_id, s.ordinal`, [caseId]).map(summaryOf);
}
