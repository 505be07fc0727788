import { describe, expect, test } from 'vitest';
import { entriesToAdd, guessMapping, readResults, readTable, type ReadResults } from '../../../../app/lots/read-results.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
function read(text: string, lot = 340, words = {}): ReadResults {
  const table = readTable(bytes(text));
  if (!table.ok) throw new Error(table.error.message);
  return readResults(table.value, { ...guessMapping(table.value), words }, lot);
}

describe('a list of results', () => {
  test.each([
    ['tabs', 'No\tOutcome\n1\tnatural\n2\tCVD\n'], ['semicolons', 'No;Outcome\r\n1;natural\r\n2;cvd\r\n'], ['commas and quotes', '"No","Outcome"\n"1","Natural"\n"2","CVD"\n'],
    ['columns the other way', 'natural|1\ncvd|2\n'], ['a byte-order mark', '\ufeffNo;Outcome\n001;natural\n#2;cvd'],
  ])('with %s', (_name, text) => {
    expect(read(text).entries.map(({ number, outcome }) => [number, outcome])).toEqual([[1, 'natural'], [2, 'grown-cvd']]);
    expect(read(text).sentences).toEqual([]);
  });
  test('the column of outcomes is found among others', () => {
    const text = 'Stone;mm;Result;by\n1;1.80;passed;Ada\n2;1.82;refer;Ada\n';
    expect(read(text).entries.map((entry) => entry.outcome)).toEqual(['natural', 'undetermined']);
  });
  test('duplicates, contradictions, unknown numbers and rows without one are named and not guessed', () => {
    const said = read('n;o\n1;natural\n1;natural\n2;natural\n2;cvd\n341;natural\nx;natural\n0;natural\n3;hpht\n');
    expect(said.entries.map((entry) => entry.number)).toEqual([1, 3]);
    expect(said.sentences).toEqual([
      '2 rows without a stone’s number: line 7, 8. Left out.',
      '1 number beyond the 340 stones of the lot: 341. Left out; count the lot again if they are right.',
      '1 number listed more than once with the same outcome: 1. Taken once.',
      '1 number listed with different outcomes: 2. Left out; enter it by hand.',
    ]);
  });
  test('words the house does not know wait for a person', () => {
    const text = '1;natural\n2;maybe\n3;maybe\n4;type IIa\n';
    expect(read(text).unknownWords).toEqual([{ word: 'maybe', count: 2 }, { word: 'type IIa', count: 1 }]);
    const told = read(text, 340, { maybe: 'undetermined', 'type IIa': null });
    expect(told.unknownWords).toEqual([]);
    expect(told.entries.map((entry) => entry.outcome)).toEqual(['natural', 'undetermined', 'undetermined']);
    expect(told.sentences).toEqual(['1 row left out as you said.']);
  });
  test('a word that is also a property of every object is a word like others', () => {
    expect(read('1;natural\n2;constructor\n').unknownWords).toEqual([{ word: 'constructor', count: 1 }]);
  });
  test('one column, nothing, or a picture is refused with what to do', () => {
    expect(readTable(bytes('1\n2\n3'))).toMatchObject({ ok: false, error: { message: expect.stringContaining('one column') as string } });
    expect(readTable(bytes(''))).toMatchObject({ ok: false, error: { message: 'The file is empty.' } });
    expect(readTable(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]))).toMatchObject({ ok: false, error: { message: expect.stringContaining('not a delimited text') as string } });
  });
  test('beside what stands: the same is passed over, the different replaced only when told', () => {
    const list = read('1;natural\n2;cvd\n3;natural\n');
    const standing = new Map([[1, 'natural' as const], [2, 'natural' as const]]);
    expect(entriesToAdd(list, standing, false)).toEqual({ entries: [{ number: 3, outcome: 'natural', was: null }], same: 1, differing: [2] });
    expect(entriesToAdd(list, standing, true).entries).toEqual([{ number: 2, outcome: 'grown-cvd', was: 'natural' }, { number: 3, outcome: 'natural', was: null }]);
  });
  test('10,000 rows', () => {
    const text = Array.from({ length: 10_000 }, (_, i) => `${i + 1};${i % 50 === 0 ? 'hpht' : 'natural'}`).join('\n');
    expect(read(text, 10_000).entries).toHaveLength(10_000);
  });
});
