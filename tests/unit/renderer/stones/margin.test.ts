import { describe, expect, test } from 'vitest';
import type { FindingView } from '../../../../app/contract/work.ts';
import { findingToken, speaksAgainst, splitFindings } from '../../../../renderer/stones/finding-weight.ts';
import { neighbour } from '../../../../renderer/stones/stone-order.ts';
import { custodyTag } from '../../../../renderer/stones/stone-words.ts';

const finding = (id: string, change: Partial<FindingView>): FindingView => ({
  id, code: id, statement: id, strength: 'neutral', supports: 'none', method: 'raman', runId: 'r', run: 'R1', origin: 'analysis', state: 'proposed', reason: '', decidedBy: null, decidedAt: null, counts: true, ...change,
});

describe('notes in the margin', () => {
  test('identity comes first, then weight; what was set aside is folded', () => {
    const split = splitFindings([
      finding('neutral', {}), finding('aside', { state: 'set-aside' }), finding('strong', { strength: 'strong', supports: 'grown' }),
      finding('diamond', { strength: 'diagnostic', supports: 'diamond', state: 'accepted' }), finding('old', { state: 'replaced' }),
    ]);
    expect(split.standing.map((f) => f.id)).toEqual(['diamond', 'strong', 'neutral']);
    expect(split.folded.map((f) => f.id)).toEqual(['aside', 'old']);
  });
  test('a note that opposes the conclusion is known', () => {
    expect(speaksAgainst('natural', 'grown-cvd')).toBe(true);
    expect(speaksAgainst('grown', 'grown-cvd')).toBe(false);
    expect(speaksAgainst('grown-cvd', 'undetermined')).toBe(false);
  });
  test('what has no weight has no colour', () => {
    expect(findingToken('none')).toBe('line');
    expect(findingToken('grown')).toBe('cvd');
  });
});

const item = (labels: readonly string[]) => ({ stones: labels.map((id) => ({ id })) });
const ofCase = { parcels: [{ items: [item(['a', 'b'])] }, { items: [item([]), item(['c'])] }] } as unknown as Parameters<typeof neighbour>[0];

test('the next stone is found over items and parcels, and none beyond the ends', () => {
  expect(neighbour(ofCase, 'b', 1)?.id).toBe('c');
  expect(neighbour(ofCase, 'a', -1)).toBeNull();
  expect(neighbour(ofCase, 'c', 1)).toBeNull();
  expect(neighbour(ofCase, 'x', 1)).toBeNull();
});

describe('the custody tag', () => {
  const custody = { place: 'bench 2', holder: '', seal: '20931', lastEvent: 'opened', at: '2026-11-25T09:14:00.000Z', differs: false, out: null } as const;
  test('gives the clock today and the day otherwise', () => {
    expect(custodyTag({ custody }, 'UTC', '2026-11-25')).toBe('in custody: bench 2, seal 20931 opened 09:14');
    expect(custodyTag({ custody: { ...custody, lastEvent: 'moved', seal: '' } }, 'UTC', '2026-12-01')).toBe('in custody: bench 2, moved 25 Nov');
  });
  test('says when it is not here any more', () => {
    expect(custodyTag({ custody: { ...custody, lastEvent: 'returned' } }, 'UTC', '2026-12-01')).toBe('returned to client 25 Nov');
  });
});
