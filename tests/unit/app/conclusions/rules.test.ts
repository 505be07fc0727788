import type { WeighedFinding } from '../../../../app/evidence/weighed-finding.ts';
import { describe, expect, test } from 'vitest';
import { checkConclusion, type ConclusionPlan } from '../../../../app/conclusions/check-conclusion.ts';
import { checkConfirmation, type ConfirmationPlan } from '../../../../app/conclusions/check-confirmation.ts';
import { checkWording } from '../../../../app/conclusions/check-wording.ts';

const finding = (change: Partial<WeighedFinding>): WeighedFinding => ({
  code: 'examiner:photoluminescence', statement: 'Made up for this test.', strength: 'strong', supports: 'natural', method: 'photoluminescence', state: 'accepted', counts: true, id: 'made-up', run: 'R1', ...change,
});
const diamond = finding({ code: 'diamond-line:present', supports: 'diamond', strength: 'diagnostic' });
const natural = finding({ supports: 'natural', strength: 'supporting' });
const plan = (change: Partial<ConclusionPlan>): ConclusionPlan => ({ conclusion: 'natural', proposed: 'natural', departure: '', findings: [diamond, finding({})], ...change });

describe('what no person may conclude', () => {
  test('natural with the diamond check and a strong finding', () => {
    expect(checkConclusion(plan({})).ok).toBe(true);
  });

  test.each([
    ['without any finding', []],
    ['with the diamond line set aside', [{ ...diamond, state: 'set-aside' as const }, finding({})]],
    ['with the diamond line from an instrument not in order', [{ ...diamond, counts: false }, finding({})]],
    ['with diamond only supported', [{ ...diamond, strength: 'supporting' as const }, finding({})]],
    ['with diamond shown by another proof', [{ ...diamond, code: 'infrared:lattice', method: 'infrared' as const }, finding({})]],
    ['with diamond only written down by a person', [{ ...diamond, run: null }, finding({})]],
    ['with a strong finding against diamond', [diamond, finding({ supports: 'not-diamond' }), finding({})]],
  ])('an origin %s, whatever reason is given', (_name, findings) => {
    for (const conclusion of ['natural', 'grown-cvd', 'grown-hpht', 'grown-undetermined-method'] as const) {
      const checked = checkConclusion(plan({ conclusion, findings, departure: 'I am sure of it.' }));
      expect(checked.ok ? null : checked.error.code).toBe('refused');
      expect(checked.ok ? '' : checked.error.message).toContain('diamond check has not passed');
    }
    for (const conclusion of ['undetermined', 'not-diamond', 'out-of-scope'] as const) {
      expect(checkConclusion(plan({ conclusion, findings, departure: 'See the reasons.' })).ok).toBe(true);
    }
  });

  test.each([
    ['one supporting finding', [natural], false],
    ['one supporting finding and neutral ones', [natural, finding({ strength: 'neutral' })], false],
    ['none', [], false],
    ['two supporting findings', [natural, finding({ strength: 'supporting', method: 'infrared' })], true],
    ['one strong finding', [finding({})], true],
  ])('natural from %s', (_name, findings, allowed) => {
    expect(checkConclusion(plan({ findings: [diamond, ...findings], departure: 'A reason.' })).ok).toBe(allowed);
  });

  test('anything before every finding is decided', () => {
    const checked = checkConclusion(plan({ conclusion: 'undetermined', proposed: 'undetermined', findings: [{ ...natural, state: 'proposed' }] }));
    expect(checked.ok ? null : checked.error.message).toBe('One finding waits for a decision.');
  });

  test('a departure needs its reason', () => {
    const checked = checkConclusion(plan({ conclusion: 'undetermined' }));
    expect(checked.ok ? null : [checked.error.code, checked.error.field]).toEqual(['invalid-input', 'departure']);
    expect(checkConclusion(plan({ conclusion: 'undetermined', departure: 'The line lies at the edge of the range.' })).ok).toBe(true);
  });
});

describe('the second person', () => {
  const answer = (change: Partial<ConfirmationPlan>): ConfirmationPlan => ({ personId: 'b', concludedById: 'a', agrees: true, reason: '', conclusion: 'natural', outcome: null, withheld: false, superseded: false, alreadyConfirmed: false, ...change });
  test.each<[string, Partial<ConfirmationPlan>, string | null]>([
    ['confirms', {}, null],
    ['is the one who concluded', { personId: 'a' }, 'refused'],
    ['answers to an older conclusion', { superseded: true }, 'conflict'],
    ['answers twice', { alreadyConfirmed: true }, 'conflict'],
    ['disagrees without reason', { agrees: false, reason: '  ' }, 'invalid-input'],
    ['disagrees with a reason', { agrees: false, reason: 'The line is not there.' }, null],
    ['agrees and concludes the same', { outcome: 'natural' }, null],
    ['agrees and concludes otherwise', { outcome: 'undetermined' }, 'invalid-input'],
    ['has not stated their own while the first is withheld', { withheld: true }, 'refused'],
    ['disagrees with the reasons of the same conclusion', { agrees: false, reason: 'The strain pattern says nothing here.', outcome: 'natural' }, null],
  ])('%s', (_name, change, code) => {
    const checked = checkConfirmation(answer(change));
    expect(checked.ok ? null : checked.error.code).toBe(code);
  });
});

test('words that promise certainty do not get into a report', () => {
  const checked = checkWording({ reasons: 'The stone is guaranteed natural.', departure: '' }, 'international');
  expect(checked.ok ? null : checked.error.field).toBe('reasons');
  expect(checkWording({ reasons: 'Characteristics are consistent with natural growth.' }, 'international').ok).toBe(true);
});
