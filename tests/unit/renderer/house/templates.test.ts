import { expect, test } from 'vitest';
import { SECTIONS } from '../../../../app/report/sections/index.ts';
import { suppliedTemplates } from '../../../../app/report/templates/supplied-templates.ts';
import { leftOutClauses } from '../../../../renderer/house/templates/left-out.ts';
import { movedBeside, movedBy } from '../../../../renderer/reports/builder/moved.ts';

const list = ['a', 'b', 'c', 'd'].map((id) => ({ id }));
const ids = (entries: readonly { id: string }[]) => entries.map((entry) => entry.id).join('');

test('one place up or down, never past an end', () => {
  expect([ids(movedBy(list, 1, 1)), ids(movedBy(list, 1, -1)), ids(movedBy(list, 0, -1)), ids(movedBy(list, 3, 1))]).toEqual(['acbd', 'bacd', 'abcd', 'abcd']);
});

test('dragged before or after another; onto itself or nowhere, nothing moves', () => {
  const one = new Set(['d']);
  expect([ids(movedBeside(list, one, 'a', 'before')), ids(movedBeside(list, one, 'a', 'after')), ids(movedBeside(list, new Set(['a']), 'd', 'after'))]).toEqual(['dabc', 'adbc', 'bcda']);
  expect([ids(movedBeside(list, one, 'd', 'before')), ids(movedBeside(list, one, 'z', 'before'))]).toEqual(['abcd', 'abcd']);
  expect(ids(movedBeside(list, new Set(['c', 'a']), 'd', 'after'))).toBe('bdac');
});

test('the supplied templates leave out no clause; without a section that alone holds one, it is named with the section', () => {
  const sections = SECTIONS.map(({ id, title, tells, clauses }) => ({ id, title, tells, clauses: [...clauses] }));
  for (const { content } of suppliedTemplates()) {
    const signatures = SECTIONS.find((section) => section.id === 'signatures')!;
    expect(leftOutClauses(content.sections.map((entry) => ({ ...entry, on: entry.id !== 'signatures' })), sections)).toEqual(signatures.clauses.map((clause) => ({ clause, section: signatures.title })));
  }
});
