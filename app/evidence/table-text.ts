import { EVIDENCE_TABLE } from './evidence-table.ts';
import { HYPOTHESIS_IDS } from './hypothesis.ts';
import type { Grade } from './hypothesis.ts';
import { RULE_BOOK, RULE_IDS } from './rules/rule-book.ts';

const sign = (grade: Grade): string => (grade === 'excludes' ? 'X' : grade === 0 ? '0' : (grade > 0 ? '+' : '−').repeat(Math.abs(grade)));
const cell = (text: string): string => text.replaceAll('|', '\\|');

/** The evidence table as it stands in docs/evidence.md, one line for a row. */
export function evidenceTableText(): string {
  const head = '| observation | codes | NU | NT | CA | CT | HP | ND | at most | source | caution |\n|---|---|---|---|---|---|---|---|---|---|---|';
  const rows = EVIDENCE_TABLE.map((row) => {
    const special = Object.entries(row.cellSources ?? {}).map(([id, source]) => `${id}: ${source}`);
    return `| ${[row.says, row.codes.map((code) => `\`${code}\``).join(' '), ...HYPOTHESIS_IDS.map((id) => sign(row.grades[id])), row.most === 'neutral' ? 'none' : `${row.most}, ${row.supports}`, [row.source, ...special].join('; '), row.caution].map(cell).join(' | ')} |`;
  });
  return [head, ...rows].join('\n');
}

/** The rules as they stand there. */
export const ruleBookText = (): string => RULE_IDS.map((id) => `- \`${id}\`: ${RULE_BOOK[id]}`).join('\n');
