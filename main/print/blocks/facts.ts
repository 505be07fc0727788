import { TEXT } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';
import { cell, table } from './table.ts';

export type Fact = { readonly label: string; readonly value: string; readonly mono: boolean };

const GAP = 22;
const PADDING = 3.2;
const LABEL_SHARE = 0.36;
/** The same where the list takes the whole width of the page. */
export const WIDE_LABEL_SHARE = 0.2;
/** The gutter that the table keeps between label and value. */
const GUTTER = 12;

const valueStyle = (fact: Fact) => (fact.mono ? TEXT.mono : TEXT.body);

/** Height the list takes at this width. */
export function factsHeight(sheet: Sheet, facts: readonly Fact[], width: number, labelShare = LABEL_SHARE): number {
  const usable = width - GUTTER;
  return facts.reduce((sum, fact) => {
    const labelLines = sheet.lines(fact.label, usable * labelShare, TEXT.label).length * TEXT.label.pitch;
    const valueLines = sheet.lines(fact.value, usable * (1 - labelShare), valueStyle(fact)).length * TEXT.body.pitch;
    return sum + Math.max(labelLines, valueLines) + 2 * PADDING;
  }, 0);
}

/** Label and value, one pair a row. */
export function facts(sheet: Sheet, parent: Element, list: readonly Fact[], x = sheet.left, width = sheet.right - x, labelShare = LABEL_SHARE): void {
  table(sheet, parent,
    [{ head: '', share: labelShare, style: TEXT.label, rowHead: true }, { head: '', share: 1 - labelShare }],
    list.map((fact) => [cell(fact.label), cell(fact.value.trim() === '' ? 'not recorded' : fact.value, valueStyle(fact))]),
    { x, width, showHead: false, padding: PADDING });
}

/** Facts under one heading. */
export type FactGroup = { readonly heading: string | null; readonly facts: readonly Fact[] };
export type FactColumn = readonly FactGroup[];

const BETWEEN_GROUPS = 12;
const HEAD_AFTER = 3;

const columnHeight = (sheet: Sheet, column: FactColumn, width: number): number => column.reduce((sum, group, index) =>
  sum + (index > 0 ? BETWEEN_GROUPS : 0) + (group.heading === null ? 0 : TEXT.section.pitch + HEAD_AFTER) + factsHeight(sheet, group.facts, width), 0);

function drawColumn(sheet: Sheet, parent: Element, column: FactColumn, x: number, width: number): void {
  column.forEach((group, index) => {
    if (index > 0) sheet.y += BETWEEN_GROUPS;
    const { heading } = group;
    if (heading !== null) {
      sheet.within(sheet.child(parent, 'H2'), 'H2', () => sheet.put(heading, x, sheet.y, TEXT.section));
      sheet.y += TEXT.section.pitch + HEAD_AFTER;
    }
    if (group.facts.length > 0) facts(sheet, parent, group.facts, x, width);
  });
}

/** Two columns of facts side by side; one under the other where they are too tall for a page. */
export function factColumns(sheet: Sheet, parent: Element, pair: readonly [FactColumn, FactColumn], before = 14): void {
  const width = (sheet.width - GAP) / 2;
  const height = before + Math.max(...pair.map((column) => columnHeight(sheet, column, width)));
  const beside = height <= sheet.bodyHeight;
  if (beside) sheet.ensure(height);
  if (!sheet.atTop) sheet.y += before;
  const top = sheet.y;
  let end = top;
  pair.forEach((column, index) => {
    if (beside) sheet.y = top;
    drawColumn(sheet, parent, column, beside ? sheet.left + index * (width + GAP) : sheet.left, beside ? width : sheet.width);
    end = Math.max(end, sheet.y);
  });
  if (beside) sheet.y = end;
}
