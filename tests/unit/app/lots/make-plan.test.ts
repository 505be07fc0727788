import { describe, expect, test } from 'vitest';
import { makePlan } from '../../../../app/lots/make-plan.ts';
import { aimSentence, drawnSentence } from '../../../../app/lots/statement-words.ts';
import { planOf, WANTED } from './made-lot.ts';

describe('making a plan', () => {
  test('to find: size from lot, share and confidence', () => {
    expect(planOf(340)).toMatchObject({ lot: 340, size: 54, acceptance: null, seed: 11 });
    expect(aimSentence(planOf(340))).toBe('Test 54 of 340: if 5 % or more are laboratory-grown, at least one is among them with 95 % confidence.');
    expect(drawnSentence(planOf(340))).toBe('54 stones of 340, drawn by a list of random numbers (starting number 11; stones numbered 1 to 340).');
  });
  test('acceptance: letter, sample and numbers', () => {
    const plan = planOf(200, { aim: { is: 'acceptance', level: 'II', aql: 1 } });
    expect(plan).toMatchObject({ size: 50, acceptance: { letter: 'G', planLetter: 'H', accept: 1, refuse: 2 } });
    expect(aimSentence(plan)).toBe('Test 50 of 200 (code letter G, plan of H): accept on 1 or fewer, refuse on 2 or more.');
  });
  test('the whole lot needs no draw', () => {
    expect(planOf(20, { aim: { is: 'all' }, seed: null })).toMatchObject({ size: 20, seed: null });
    expect(planOf(10, { aim: { is: 'acceptance', level: 'II', aql: 1 } })).toMatchObject({ size: 10, seed: null });
  });
  test('more than the lot, or a list without a start, is refused beside its field', () => {
    expect(makePlan(20, { ...WANTED, aim: { is: 'own', size: 21 } })).toMatchObject({ ok: false, error: { field: 'aim.size' } });
    expect(makePlan(340, { ...WANTED, seed: null })).toMatchObject({ ok: false, error: { field: 'seed' } });
  });
});
