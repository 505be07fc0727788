import { capitalise } from '../../../app/report/count-words.ts';
import { findingWords } from '../../../app/report/finding-words.ts';
import { factColumns, facts, WIDE_LABEL_SHARE } from '../blocks/facts.ts';
import { drawGlyph } from '../blocks/glyph.ts';
import { heading } from '../blocks/heading.ts';
import { paragraph } from '../blocks/paragraph.ts';
import { cell, table, type Cell } from '../blocks/table.ts';
import { TEXT } from '../paper.ts';
import type { Element } from '../sheet.ts';
import { remember, type ReportContext, type Stone } from './context.ts';
import { drawFigures } from './figures.ts';
import { clientFacts, workFacts } from './work-facts.ts';

const GLYPH_SIDE = 12;
const GLYPH_ROOM = 17;

/** The opinion, marked as one: sign, words, reasons, and who stands behind them. */
function drawOpinion({ model, sheet }: ReportContext, section: Element, stone: Stone): void {
  const { conclusion } = stone;
  const which = model.stones.length === 1 || stone.heading.trim() === '' ? stone.label : `${stone.label}, ${stone.heading}`;
  paragraph(sheet, section, `Opinion of the examiners, stone ${which}`, { style: TEXT.small, after: 1 });
  if (!conclusion) {
    paragraph(sheet, section, 'No conclusion has been recorded for this stone.', { style: TEXT.opinion, after: 3 });
    return;
  }
  const lines = sheet.lines(capitalise(conclusion.words), sheet.width - GLYPH_ROOM, TEXT.opinion);
  sheet.artifact(() => drawGlyph(sheet, conclusion.id, sheet.left, sheet.y + (TEXT.opinion.pitch - GLYPH_SIDE) / 2 + 1, GLYPH_SIDE));
  sheet.within(sheet.child(section, 'H2'), 'H2', () => {
    for (const line of lines) {
      sheet.put(line, sheet.left + GLYPH_ROOM, sheet.y, TEXT.opinion);
      sheet.y += TEXT.opinion.pitch;
    }
  });
  sheet.y += 2;
  if (conclusion.reasons.trim() !== '') paragraph(sheet, section, conclusion.reasons, { style: TEXT.lead, after: 2 });
  if (conclusion.departure.trim() !== '') {
    paragraph(sheet, section, `Departs from what the rules propose: ${conclusion.departure}`, { style: TEXT.lead, after: 2 });
  }
  const concluded = `Concluded by ${conclusion.examiner} on ${conclusion.concludedOn}`;
  const rules = conclusion.rules.trim() === '' ? '' : ` Rules ${conclusion.rules}.`;
  if (conclusion.secondPerson.trim() !== '') {
    paragraph(sheet, section, `${concluded}, confirmed by ${conclusion.secondPerson} on ${conclusion.confirmedOn}.${rules}`, { style: TEXT.small });
  } else {
    paragraph(sheet, section, `${concluded}.${rules}`, { style: TEXT.small });
    paragraph(sheet, section, 'Not confirmed by a second person.', { style: TEXT.warnSmall });
  }
}

function findingRow(finding: Stone['findings'][number]): Cell[] {
  const says = finding.says.trim() === '' ? findingWords(finding.strength, finding.supports) : finding.says;
  return [
    cell(`${finding.run} ${finding.method}`.trim()),
    { parts: [{ text: finding.statement }, { text: finding.caution, style: TEXT.small }] },
    { parts: [{ text: says }, { text: finding.counts ? '' : 'listed, does not count', style: TEXT.warnSmall }] },
  ];
}

function drawFindings({ sheet }: ReportContext, section: Element, stone: Stone): void {
  heading(sheet, section, 'Findings', { level: 3, bookmark: null, keepWith: 60 });
  if (stone.findings.length === 0) {
    paragraph(sheet, section, 'No findings were accepted for this stone.', { style: TEXT.lead });
    return;
  }
  table(sheet, section, [{ head: 'Method', share: 25 }, { head: 'Finding', share: 47 }, { head: 'What it says', share: 28, style: TEXT.lead }], stone.findings.map(findingRow));
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

/** Facts of one stone and, beside them, of the work; a report on many stones divides the stone's own facts in two. */
function drawFacts({ model, sheet }: ReportContext, section: Element, stone: Stone): void {
  if (model.stones.length === 1) {
    factColumns(sheet, section, [
      [{ heading: 'The stone', facts: stone.facts }, { heading: 'The client', facts: clientFacts(model) }],
      [{ heading: 'The work', facts: workFacts(model) }],
    ]);
    return;
  }
  const half = Math.ceil(stone.facts.length / 2);
  if (half > 0) factColumns(sheet, section, [[{ heading: null, facts: stone.facts.slice(0, half) }], [{ heading: null, facts: stone.facts.slice(half) }]], 8);
}

/** All that is said of one stone. */
export function drawStone(context: ReportContext, index: number): void {
  const { model, sheet } = context;
  const stone = model.stones[index]!;
  const section = sheet.child(sheet.root, 'Sect', { title: `Stone ${stone.label}` });
  if (model.stones.length > 1) {
    sheet.ensure(190);
    if (!sheet.atTop) {
      sheet.y += 20;
      sheet.rule(sheet.y, 'ink', 0.9);
      sheet.y += 9;
    }
  }
  remember(context, `stone ${index}`);
  sheet.bookmark(`Stone ${stone.label}`);
  drawOpinion(context, section, stone);
  sheet.y += 7;
  sheet.rule(sheet.y, 'line', 0.6);
  drawFacts(context, section, stone);
  drawFigures(context, section, stone);
  drawFindings(context, section, stone);
  drawLeftOut(context, section, stone);
}
