import type { ReadDb } from '../handle.ts';

type Series = { readonly kind: 'case' | 'report'; readonly year: number; readonly given: number; readonly highest: number; readonly last: number };

const NUMBERED = { case: { letter: 'C', table: 'case_record', noun: 'case' }, report: { letter: 'S', table: 'report', noun: 'report' } } as const;

/** Numbers of a kind that are there, and how far the counter says they go: "C-2026-0001" is the year from the third, the number from the eighth character. */
const seriesSql = (kind: Series['kind']): string => `
  SELECT '${kind}' AS kind, year, sum(given) AS given, sum(highest) AS highest, sum(last) AS last FROM (
    SELECT CAST(substr(number, 3, 4) AS INTEGER) AS year, count(DISTINCT number) AS given, max(CAST(substr(number, 8) AS INTEGER)) AS highest, 0 AS last FROM ${NUMBERED[kind].table} GROUP BY 1
    UNION ALL SELECT year, 0, 0, last FROM number_counter WHERE kind = '${kind}'
  ) GROUP BY year ORDER BY year`;

const numberOf = ({ kind, year }: Series, n: number): string => `${NUMBERED[kind].letter}-${year}-${String(n).padStart(4, '0')}`;

function faultOf(series: Series): string | null {
  const { kind, year, given, highest, last } = series;
  const { noun } = NUMBERED[kind];
  if (given !== highest) return `The numbers of ${noun}s of ${year} have a gap: ${given} are there, and the highest is ${numberOf(series, highest)}.`;
  if (last === highest) return null;
  const newest = highest === 0 ? `there is no ${noun}` : `the newest ${noun} is ${numberOf(series, highest)}`;
  return `The counter of ${noun} numbers of ${year} stands at ${last}, and ${newest}: it was changed from outside, and the next number would ${last > highest ? 'leave a gap' : 'be one that was given out'}.`;
}

/** Whether numbers of cases and reports have no gaps and their counters stand where the records do; a sentence where not. The counters themselves are not vouched for. */
export function numbersFault(db: ReadDb): string | null {
  const strange = db.get<{ kind: string }>(`SELECT kind FROM number_counter WHERE kind NOT IN ('case', 'report')`);
  if (strange !== undefined) return `There is a counter of numbers of the kind “${strange.kind}”, which the program does not know: it was put in from outside.`;
  for (const kind of ['case', 'report'] as const) {
    for (const series of db.all<Series>(seriesSql(kind))) {
      const fault = faultOf(series);
      if (fault !== null) return fault;
    }
  }
  return null;
}
