import { expect, test } from 'vitest';
import { chooseAttached, type ListedRecord } from '../../../../app/report-document/choose-attached.ts';

const record = (id: string, size: number, runs: readonly string[], name = `${id}.txt`): ListedRecord => ({ id, name, mediaType: 'text/plain', size, sha256: id.padEnd(64, '0'), runs });

test('files of instruments go before photographs, each while it fits; what does not fit is named with its size and the limit', () => {
  const chosen = chooseAttached([record('a', 600_000, []), record('b', 700_000, ['R2']), record('c', 2_000_000, ['R1']), record('d', 300_000, ['R3', 'R4'])], 1);
  expect(chosen.map(({ id, listed }) => [id, listed.attachedAs])).toEqual([['b', 'R2-b.txt'], ['c', null], ['d', 'R3-d.txt'], ['a', null]]);
  expect(chosen[1]!.listed.leftOut).toBe('2.0 MB; with it the attached files would be larger than the 1 MB that the laboratory allows');
  expect(chosen[0]!.listed.leftOut).toBe('');
});

test('every name is given once and holds no path', () => {
  const names = chooseAttached([record('a', 1, ['R1'], '../x.txt'), record('b', 1, ['R1'], '../x.txt'), record('c', 1, [], 'CON')], 20).map(({ listed }) => listed.attachedAs);
  expect(new Set(names.map((name) => name!.toLowerCase())).size).toBe(3);
  for (const name of names) expect(name).not.toMatch(/[/\\]/);
});

test('a limit of nothing leaves everything out, and everything is still listed', () => {
  const chosen = chooseAttached([record('a', 1, ['R1']), record('b', 0, ['R1'])], 0);
  expect(chosen.map(({ listed }) => listed.attachedAs)).toEqual([null, 'R1-b.txt']);
});
