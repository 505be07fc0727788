import { describe, expect, test } from 'vitest';
import { answerOf } from '../../../../renderer/reports/verdict-words.ts';

describe('the answer over a checked report', () => {
  const of = (state: 'in-force' | 'superseded' | 'withdrawn' | 'not-ours') => answerOf({ verdict: 'authentic', standing: { state, sentence: '' } });

  test('is “Authentic” alone only where nothing speaks against relying on it', () => {
    expect(of('in-force')).toEqual({ words: 'Authentic', line: 'sound' });
    expect(answerOf({ verdict: 'authentic', standing: null })).toEqual({ words: 'Authentic', line: 'sound' });
  });

  test('says at once that it no longer counts', () => {
    expect(of('withdrawn')).toEqual({ words: 'Authentic, but withdrawn', line: 'wrong' });
    expect(of('superseded')).toEqual({ words: 'Authentic, but replaced', line: 'wrong' });
    expect(of('not-ours')).toEqual({ words: 'Authentic, but not held here', line: 'open' });
  });

  test('keeps the words of a check that found no signature to rely on', () => {
    expect(answerOf({ verdict: 'altered', standing: null })).toEqual({ words: 'Altered', line: 'wrong' });
  });
});
