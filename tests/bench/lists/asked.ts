import type { Input, OperationName } from '../../../app/contract/index.ts';
import type { Casebook } from '../../../db/open-casebook.ts';

export type Asked = { readonly what: string; readonly name: OperationName; readonly input: unknown };

const ask = <K extends OperationName>(what: string, name: K, input: Input<K>): Asked => ({ what, name, input });
const DECADE = { from: '2016-01-01', to: '2026-12-31' };

/** What the pages of the window ask for, with the words a person types. */
export function asked(casebook: Casebook): Asked[] {
  const first = (sql: string): string => casebook.handle.read.get<{ id: string }>(sql)!.id;
  const clientId = first('SELECT id FROM client LIMIT 1');
  const personId = first('SELECT id FROM person LIMIT 1');
  const caseId = first('SELECT id FROM case_record ORDER BY rowid DESC LIMIT 1');
  const stoneId = first('SELECT id FROM stone ORDER BY rowid DESC LIMIT 1');
  const words: readonly (readonly [string, string])[] = [
    ['one common word', 'diamond'], ['a word in every stone', 'stone'], ['two common words', 'emission line'], ['two letters', 'em'], ['a year', '2020'], ['a number', '736.8'], ['a case by its number', 'C-2020-0500'],
    ['an accent', 'hôtel'], ['a phrase', 'the lines and the pattern agree'], ['a rare word', 'boron'], ['nothing fits', 'zirconium'], ['two words, never together', 'łódź saffron'], ['pieces of common words', 'ine ion'],
  ];
  return [
    ask('bench', 'bench.today', {}),
    ask('cases, all', 'cases.list', {}), ask('cases, open', 'cases.list', { state: 'open' }), ask('cases, a client', 'cases.list', { text: 'müller' }), ask('cases, one number', 'cases.list', { text: 'C-2020-0500' }), ask('cases, nothing fits', 'cases.list', { text: 'zirconium' }),
    ask('cases to choose of for a report', 'cases.list', { text: '', state: 'all', limit: 1000, offset: 0 }),
    ask('a case', 'cases.get', { caseId }), ask('custody of a case', 'custody.list', { caseId, itemId: null, limit: 1000 }),
    ask('stones, all', 'stones.list', {}), ask('stones, a client', 'stones.list', { text: 'müller' }), ask('stones, a shape', 'stones.list', { text: 'cushion' }), ask('stones, one number', 'stones.list', { text: 'C-2020-0500' }), ask('stones, nothing fits', 'stones.list', { text: 'zirconium' }),
    ask('cases by what comes next', 'cases.list', { sort: { key: 'next', down: false } }), ask('stones by weight', 'stones.list', { sort: { key: 'weight', down: true } }), ask('stones by their labels', 'stones.list', { sort: { key: 'label', down: false } }), ask('stones, the last page', 'stones.list', { offset: 109_000 }),
    ask('history by conclusion', 'history.stones', { sort: { key: 'conclusion', down: false } }), ask('history by stage', 'history.stones', { sort: { key: 'stage', down: false } }), ask('history, 1,000 for a CSV', 'history.stones', { limit: 1000, offset: 50_000 }),
    ask('a stone', 'stones.folder', { stoneId }),
    ask('where everything is', 'custody.whereabouts', {}),
    ask('reports', 'reports.list', { caseId: null }), ask('drafts of reports', 'reportDrafts.list', { caseId: null }), ask('instruments', 'instruments.list', {}),
    ask('clients', 'clients.search', { text: '' }), ask('clients, a name', 'clients.search', { text: 'mül' }),
    ask('custody ledger', 'custody.list', { caseId: null, itemId: null, limit: 1000 }), ask('audit ledger', 'audit.list', { caseId: null, limit: 1000 }),
    ask('history: choices', 'history.choices', {}), ask('history, all', 'history.stones', {}), ask('history, a finding', 'history.stones', { text: 'boron' }), ask('history, a client', 'history.stones', { clientId }), ask('history, a conclusion', 'history.stones', { conclusion: 'undetermined' }),
    ask('history, a person', 'history.stones', { personId }), ask('history, one year', 'history.stones', { from: '2020-01-01', to: '2020-12-31' }), ask('history, disagreement', 'history.stones', { disagreement: true }), ask('history, nothing fits', 'history.stones', { text: 'zirconium' }),
    ask('figures by month', 'figures.overTime', { ...DECADE, grain: 'month' }), ask('figures by year', 'figures.overTime', { ...DECADE, grain: 'year' }), ask('agreement', 'figures.agreement', DECADE), ask('checks', 'figures.checks', DECADE), ask('trials', 'trials.list', DECADE),
    ...words.map(([what, text]) => ask(`find: ${what}, “${text}”`, 'find.anything', { text })),
    ...words.filter(([what]) => !what.startsWith('a case')).map(([what, text]) => ask(`history: ${what}, “${text}”`, 'history.stones', { text })),
  ];
}
