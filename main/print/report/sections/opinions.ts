import { capitalise } from '../../../../app/report/count-words.ts';
import { findingWords } from '../../../../app/report/finding-words.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import type { OpinionsPart } from '../../../../app/report/sections/opinions.ts';
import { drawGlyph } from '../../blocks/glyph.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { TEXT } from '../../paper.ts';
import type { Element, Sheet } from '../../sheet.ts';
import { remember, stoneMark, type ReportContext } from '../context.ts';

type Opinion = OpinionsPart['stones'][number];

/** Sign and words, and their sizes: large where the report tells of one stone. */
const LOOK = {
  single: { style: TEXT.opinion, glyph: 12, room: 17 },
  many: { style: TEXT.strong, glyph: 9.5, room: 15 },
} as const;

/** "Diagnostic for diamond: F1. Strong for CVD growth: F2, F3." */
function weightWords(weights: Opinion['weights']): string {
  const groups = new Map<string, string[]>();
  for (const weight of weights) {
    const says = weight.says.trim() === '' ? findingWords(weight.strength, weight.supports) : weight.says;
    const group = weight.counts ? says : 'listed, does not count';
    groups.set(group, [...groups.get(group) ?? [], weight.finding]);
  }
  return [...groups].map(([says, findings]) => `${capitalise(says)}: ${findings.join(', ')}.`).join(' ');
}

function drawWords(sheet: Sheet, section: Element, conclusion: NonNullable<Opinion['conclusion']>, look: (typeof LOOK)['single' | 'many'], tag: 'H2' | 'H3'): void {
  const lines = sheet.lines(capitalise(conclusion.words), sheet.width - look.room, look.style);
  sheet.artifact(() => drawGlyph(sheet, conclusion.id, sheet.left, sheet.y + (look.style.pitch - look.glyph) / 2 + 1, look.glyph));
  sheet.within(sheet.child(section, tag), tag, () => {
    for (const line of lines) {
      sheet.put(line, sheet.left + look.room, sheet.y, look.style);
      sheet.y += look.style.pitch;
    }
  });
  sheet.y += 2;
}

function drawGround(sheet: Sheet, section: Element, { conclusion, weights }: Opinion): void {
  if (conclusion === null) return;
  if (conclusion.reasons.trim() !== '') paragraph(sheet, section, conclusion.reasons, { style: TEXT.lead, after: 2 });
  if (conclusion.departure.trim() !== '') paragraph(sheet, section, `Departs from what the rules propose: ${conclusion.departure}`, { style: TEXT.lead, after: 2 });
  if (weights.length > 0) paragraph(sheet, section, `What the findings were taken to say. ${weightWords(weights)}`, { style: TEXT.smallInk, after: 2 });
  const concluded = `Concluded by ${conclusion.examiner} on ${conclusion.concludedOn}`;
  const rules = conclusion.rules.trim() === '' ? '' : ` Rules ${conclusion.rules}.`;
  if (conclusion.secondPerson.trim() !== '') {
    paragraph(sheet, section, `${concluded}, confirmed by ${conclusion.secondPerson} on ${conclusion.confirmedOn}.${rules}`, { style: TEXT.small });
    return;
  }
  paragraph(sheet, section, `${concluded}.${rules}`, { style: TEXT.small });
  paragraph(sheet, section, 'Not confirmed by a second person.', { style: TEXT.warnSmall });
}

function drawOne(context: ReportContext, section: Element, opinion: Opinion, single: boolean): void {
  const { sheet } = context;
  const look = single ? LOOK.single : LOOK.many;
  const which = single || opinion.heading.trim() === '' ? opinion.label : `${opinion.label}, ${opinion.heading}`;
  if (!single) {
    sheet.ensure(90);
    if (!sheet.atTop) sheet.y += 10;
  }
  remember(context, stoneMark('opinions', opinion.label));
  paragraph(sheet, section, `Opinion of the examiners, stone ${which}`, { style: TEXT.small, after: 1 });
  if (opinion.conclusion === null) paragraph(sheet, section, opinion.withheld === true ? 'Concluded; shown after you have stated yours.' : 'No conclusion has been recorded for this stone.', { style: look.style, after: 3 });
  else drawWords(sheet, section, opinion.conclusion, look, single ? 'H2' : 'H3');
  drawGround(sheet, section, opinion);
}

/** What the examiners conclude, marked as opinion. On one stone it stands large, without a further heading, and closes with a rule. */
export function drawOpinions(context: ReportContext, part: OpinionsPart): void {
  const { sheet } = context;
  const single = part.stones.length === 1;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Opinions and interpretations' });
  if (single) {
    sheet.ensure(90);
    sheet.bookmark('Opinion');
  } else {
    heading(sheet, section, 'Opinions and interpretations', { keepWith: 90 });
    if (part.stones.length > 0) paragraph(sheet, section, 'What follows is opinion. It rests on the results of this report, whose findings it names by their numbers.', { style: TEXT.small });
    // Outcomes of a lot stand in its own table (ISO/IEC 17025:2017, 7.8.7.3: marked as opinion).
    if (sectionOf(context.model, 'lots') !== undefined) paragraph(sheet, section, 'The outcomes that are told of the stones of a lot are opinion too: of those who tested them, by the methods named with it. Its counts and weights are results.', { style: TEXT.small });
  }
  remember(context, 'opinions');
  for (const opinion of part.stones) drawOne(context, section, opinion, single);
  if (single) {
    sheet.y += 7;
    sheet.rule(sheet.y, 'line', 0.6);
  }
}
