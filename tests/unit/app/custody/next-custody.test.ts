import { describe, expect, test } from 'vitest';
import { currentCustody, type CurrentCustody } from '../../../../app/custody/current-custody.ts';
import { nextCustody, type CustodyRequest } from '../../../../app/custody/next-custody.ts';
import type { CustodyContent } from '../../../../app/domain/custody-event.ts';

const at = '2026-03-02T09:00:00.000Z';
const folded = (...contents: CustodyContent[]): CurrentCustody => currentCustody(contents.map((content) => ({ at, content })))!;
const received: CustodyContent = { event: 'received', from: 'client', to: 'Ada', place: 'safe 2' };
const weighed: CustodyContent = { event: 'weighed', weight: 10_000, weightUnit: 'ct' };
const next = (current: CurrentCustody, request: CustodyRequest) => nextCustody(request, { label: 'A', current, weightUnit: 'ct', tolerance: 20, clientName: 'Client', person: 'Ada', today: '2026-03-02' });

describe('currentCustody', () => {
  test('folds place, holder, seal and weight', () => {
    const now = folded(received, weighed, { event: 'sealed', seal: 'S-1' }, { event: 'moved', place: 'bench 1' }, { event: 'handed-over', from: 'Ada', to: 'Ben' }, { event: 'tested', run: 'R1' });
    expect(now).toMatchObject({ place: 'bench 1', holder: 'Ben', seal: 'S-1', lastEvent: 'tested', differs: false, lastWeight: { weight: 10_000, unit: 'ct' }, returned: false });
  });
  test('a difference stays flagged though a later weighing agrees', () => {
    expect(folded(received, { ...weighed, differs: true }, { ...weighed, differs: false }).differs).toBe(true);
  });
  test('what went back lies nowhere', () => {
    expect(folded(received, { event: 'returned', to: 'Client' })).toMatchObject({ place: '', holder: 'Client', returned: true });
  });
  test('a later entry does not bring it back', () => {
    expect(folded(received, { event: 'returned' }, { event: 'photographed' })).toMatchObject({ returned: true, place: '' });
  });
  test('nothing recorded', () => {
    expect(currentCustody([])).toBeNull();
  });
});

describe('nextCustody', () => {
  test('a weight is compared with the last one in the same unit', () => {
    expect(next(folded(received, weighed), { event: 'weighed', weight: 10_021 })).toMatchObject({ ok: true, value: { expectedWeight: 10_000, tolerance: 20, differs: true } });
    const other = next(folded(received, { ...weighed, weightUnit: 'g' }), { event: 'weighed', weight: 10_021 });
    expect(other).toEqual({ ok: true, value: { event: 'weighed', weight: 10_021, weightUnit: 'ct' } });
  });
  test('small losses that add up are compared with what came in', () => {
    const drift = folded(received, weighed, { ...weighed, weight: 9_988 });
    expect(next(drift, { event: 'weighed', weight: 9_976 })).toMatchObject({ ok: true, value: { expectedWeight: 10_000, tolerance: 20, differs: true, note: 'Compared with the first weight on record, not with the last.' } });
    expect(next(drift, { event: 'weighed', weight: 9_985 })).toEqual({ ok: true, value: { event: 'weighed', weight: 9_985, weightUnit: 'ct', expectedWeight: 9_988, tolerance: 20, differs: false } });
  });
  test('what goes back answers to what came in', () => {
    expect(next(folded(received, weighed, { ...weighed, weight: 9_988 }), { event: 'returned', weight: 9_985 })).toMatchObject({ ok: true, value: { expectedWeight: 10_000, differs: false, note: 'Compared with the first weight on record, not with the last.' } });
    expect(next(folded(received, weighed), { event: 'returned', weight: 9_985 })).not.toHaveProperty('value.note');
  });
  test('weighing under a seal says so', () => {
    expect(next(folded(received, weighed, { event: 'sealed', seal: 'S-1' }), { event: 'weighed', weight: 10_000 })).toMatchObject({ ok: true, value: { note: 'Weighed under seal S-1.' } });
  });
  test('opening what is under no seal is recorded and says so', () => {
    expect(next(folded(received), { event: 'opened', note: 'bag torn' })).toEqual({ ok: true, value: { event: 'opened', note: 'bag torn. No seal was on record when it was opened.' } });
  });
  test('opening under another seal says so, under the right one nothing', () => {
    const sealed = folded(received, { event: 'sealed', seal: 'S-1' });
    expect(next(sealed, { event: 'opened', seal: 'S-2' })).toMatchObject({ value: { seal: 'S-2', note: 'The seal on record was S-1.' } });
    expect(next(sealed, { event: 'opened' })).toEqual({ ok: true, value: { event: 'opened', seal: 'S-1' } });
  });
  test('sealing twice says that the opening is missing', () => {
    expect(next(folded(received, { event: 'sealed', seal: 'S-1' }), { event: 'sealed', seal: 'S-2' })).toMatchObject({ value: { note: expect.stringContaining('S-1') as string } });
  });
  test.each([['weighed', 'weight'], ['sealed', 'seal'], ['moved', 'place'], ['handed-over', 'to']] as const)('%s needs %s', (event, field) => {
    expect(next(folded(received), { event, [field]: field === 'weight' ? undefined : '  ' })).toMatchObject({ ok: false, error: { code: 'incomplete', fields: { [field]: expect.any(String) as string } } });
  });
  test('a return names the client and closes', () => {
    const returned = next(folded(received, weighed), { event: 'returned', weight: 10_000 });
    expect(returned).toMatchObject({ value: { from: 'Ada', to: 'Client', differs: false } });
    const unweighed = 'It was not weighed when it went back.';
    expect(next(folded(received, weighed), { event: 'returned' })).toMatchObject({ value: { note: unweighed } });
    // A long note of the person never pushes out what the entry has to say.
    const long = next(folded(received, weighed), { event: 'returned', note: 'n'.repeat(2000) });
    expect(long).toMatchObject({ value: { note: expect.stringMatching(/^n+\. It was not weighed when it went back\.$/) } });
    expect(long.ok && long.value.note!.length).toBeLessThanOrEqual(2000);
    expect(next(folded(received, { event: 'returned' }), { event: 'moved', place: 'x' })).toMatchObject({ ok: false, error: { code: 'gone' } });
  });
});

describe('what leaves the house', () => {
  const out: CustodyContent = { event: 'handed-over', from: 'Ada', to: 'Courier', outside: true, dueBack: '2026-03-05', purpose: 'infrared elsewhere' };
  test('is with who took it until it is taken back, and lies on no shelf', () => {
    expect(folded(received, out)).toMatchObject({ place: '', holder: 'Courier', out: { to: 'Courier', dueBack: '2026-03-05', purpose: 'infrared elsewhere', since: at } });
    expect(folded(received, out, { event: 'taken-back', from: 'Courier', to: 'Ada', place: 'safe 2' })).toMatchObject({ place: 'safe 2', holder: 'Ada', out: null });
  });
  test('inside the house a hand-over leaves it on its shelf', () => {
    expect(folded(received, { event: 'handed-over', from: 'Ada', to: 'Ben' })).toMatchObject({ place: 'safe 2', holder: 'Ben', out: null });
  });
  test('only what leaves the house is expected back', () => {
    const inside = next(folded(received), { event: 'handed-over', to: 'Ben', dueBack: '2026-03-05' });
    expect(inside).toMatchObject({ ok: true, value: { event: 'handed-over', from: 'Ada', to: 'Ben' } });
    expect(inside.ok && inside.value.dueBack).toBeUndefined();
    expect(next(folded(received), { event: 'handed-over', to: 'Courier', outside: true, dueBack: '2026-03-05', purpose: ' setting ' })).toMatchObject({ value: { outside: true, dueBack: '2026-03-05', purpose: 'setting' } });
  });
  test('a day that has passed is refused beside its field', () => {
    expect(next(folded(received), { event: 'handed-over', to: 'Courier', outside: true, dueBack: '2026-03-01' })).toMatchObject({ ok: false, error: { code: 'incomplete', fields: { dueBack: expect.stringContaining('passed') } } });
  });
  test('taking back names who brought it and who takes it, and says when it was not on record as out', () => {
    expect(next(folded(received, out), { event: 'taken-back', place: 'safe 2' })).toMatchObject({ value: { from: 'Courier', to: 'Ada', place: 'safe 2' } });
    expect(next(folded(received), { event: 'taken-back', place: 'safe 2' })).toMatchObject({ value: { note: 'It was not on record as out of the house.' } });
    expect(next(folded(received, out), { event: 'taken-back' })).toMatchObject({ error: { fields: { place: expect.any(String) } } });
  });
  test('a weight on its return answers to the weight before it left', () => {
    expect(next(folded(received, weighed, out), { event: 'taken-back', place: 'safe 2', weight: 9_900 })).toMatchObject({ value: { differs: true, expectedWeight: 10_000 } });
  });
  test('another seal than it left with is named and is on record from then on', () => {
    const back = next(folded(received, { event: 'sealed', seal: 'S-1' }, out), { event: 'taken-back', place: 'safe 2', seal: 'S-2' });
    expect(back).toMatchObject({ value: { seal: 'S-2', note: 'The seal on record was S-1.' } });
    expect(back.ok && folded(received, { event: 'sealed', seal: 'S-1' }, out, back.value).seal).toBe('S-2');
  });
  test('what is done to it while it should be out says so', () => {
    expect(next(folded(received, out), { event: 'moved', place: 'bench 1' })).toMatchObject({ value: { note: 'It was on record as out with Courier, whose handing back was not recorded.' } });
  });
});

describe('counting what is there', () => {
  test('seen takes the place on record, and says when it lay elsewhere', () => {
    expect(next(folded(received), { event: 'seen' })).toMatchObject({ value: { event: 'seen', place: 'safe 2' } });
    expect(next(folded(received), { event: 'seen', place: 'bench 1' })).toMatchObject({ value: { place: 'bench 1', note: 'The place on record was safe 2.' } });
    expect(folded(received, { event: 'seen', place: 'bench 1' }).place).toBe('bench 1');
  });
});
