import { capitalise } from '../../../../app/report/count-words.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import type { ResultsPart } from '../../../../app/report/sections/results.ts';
import { factColumns, facts, WIDE_LABEL_SHARE } from '../../blocks/facts.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table, type Cell } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import type { Element } from '../../sheet.ts';
import { remember, stoneMark, type ReportContext } from '../context.ts';
import { drawFigure, PROPORTION } from '../figures.ts';

type Stone = ResultsPart['stones'][number];

const findingRow = (finding: Stone['findings'][number]): Cell[] => [
  cell(finding.no, TEXT.mono),
  cell(`${finding.run} ${finding.method}`.trim()),
  { parts: [{ text: finding.statement }, { text: finding.caution, style: TEXT.small }] },
];

function drawFindings({ sheet }: ReportContext, section: Element, stone: Stone): void {
  heading(sheet, section, 'Findings', { level: 3, bookmark: null, keepWith: 60 });
  if (stone.findings.length === 0) {
    paragraph(sheet, section, 'No findings were accepted for this stone.', { style: TEXT.lead });
    return;
  }
  table(sheet, section, [{ head: 'No.', share: 6, rowHead: true }, { head: 'Method', share: 27 }, { head: 'Finding', share: 67 }], stone.findings.map(findingRow));
}

const notTested = (stone: Stone): string => (stone.notDone.length === 0
  ? 'Every test that is possible for this stone was done.'
  : `${capitalise(stone.notDone.map((text) => text.trim().replace(/\.$/, '')).join('; '))}.`);

/** What was set aside and what was not tested: a reader must be able to see what the opinion does not rest on. */
function drawLeftOut({ sheet }: ReportContext, section: Element, stone: Stone): void {
  if (stone.setAside.length === 0) {
    sheet.ensure(60);
    sheet.y += 6;
    facts(sheet, section, [
      { label: 'Set aside', value: 'No finding was set aside.', mono: false },
      { label: 'Not tested', value: notTested(stone), mono: false },
    ], sheet.left, sheet.width, WIDE_LABEL_SHARE);
    return;
  }
  heading(sheet, section, 'Set aside', { level: 3, bookmark: null, keepWith: 40 });
  table(sheet, section, [{ head: 'Finding', share: 50 }, { head: 'Reason', share: 50, style: TEXT.lead }], stone.setAside.map((entry) => [cell(entry.statement), cell(entry.reason)]));
  heading(sheet, section, 'Not tested', { level: 3, bookmark: null, keepWith: 20 });
  paragraph(sheet, section, notTested(stone), { style: TEXT.lead });
}

/** The facts of a stone in two columns, unless they stand beside the client already. */
function drawFacts({ model, sheet }: ReportContext, section: Element, stone: Stone, single: boolean): void {
  if (single && sectionOf(model, 'particulars') !== undefined) return;
  const half = Math.ceil(stone.facts.length / 2);
  if (half > 0) factColumns(sheet, section, [[{ heading: null, facts: stone.facts.slice(0, half) }], [{ heading: null, facts: stone.facts.slice(half) }]], 8);
}

/** Height of a stone of which nothing was found, pt: its few lines stay together. */
const WITHOUT_FINDINGS = 240;

function drawStone(context: ReportContext, part: ResultsPart, index: number, under: PDFKit.PDFOutline | null): void {
  const { sheet } = context;
  const stone = part.stones[index]!;
  const single = part.stones.length === 1;
  const section = sheet.child(sheet.root, 'Sect', { title: `Results, stone ${stone.label}` });
  if (!single) {
    sheet.ensure(stone.figures.length + stone.findings.length === 0 ? WITHOUT_FINDINGS : 190);
    if (index > 0 && !sheet.atTop) {
      sheet.y += 16;
      sheet.rule(sheet.y, 'ink', 0.9);
    }
    heading(sheet, section, stone.heading.trim() === '' ? `Stone ${stone.label}` : `Stone ${stone.label}, ${stone.heading}`,
      { level: 3, style: TEXT.strong, before: 8, after: 0, keepWith: 100, bookmark: `Stone ${stone.label}`, ...(under ? { under } : {}) });
  }
  remember(context, stoneMark('results', stone.label));
  drawFacts(context, section, stone, single);
  for (const figure of stone.figures) drawFigure(context, section, figure, { wanted: single ? PROPORTION.single : PROPORTION.many, least: PROPORTION.least });
  drawFindings(context, section, stone);
  drawLeftOut(context, section, stone);
}

/** What was measured and seen, stone by stone. The figures of the only stone stand under its facts without a further heading. */
export function drawResults(context: ReportContext, part: ResultsPart): void {
  const { sheet } = context;
  if (part.stones.length === 0) return;
  remember(context, 'results');
  if (part.stones.length === 1) {
    sheet.bookmark('Results');
    drawStone(context, part, 0, null);
    return;
  }
  const mark = heading(sheet, sheet.root, 'Results', { keepWith: 190 });
  part.stones.forEach((_, index) => drawStone(context, part, index, mark));
}
