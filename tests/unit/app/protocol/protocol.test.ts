import { describe, expect, test } from 'vitest';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import type { MethodId } from '../../../../app/domain/method.ts';
import { DEFAULT_PROTOCOLS } from '../../../../app/protocol/default-protocols.ts';
import { protocol, protocols, PROTOCOL_PURPOSES } from '../../../../app/protocol/protocol.ts';
import { protocolStateOf, purposeOf } from '../../../../app/protocol/protocol-state.ts';
import type { ProtocolStone } from '../../../../app/protocol/protocol-state.ts';

const LOOSE: ProtocolStone = { mounted: false, setting: null, colourClass: 'colourless', kind: 'loose' };
const state = (stone: ProtocolStone, ...done: MethodId[]) => protocolStateOf(DEFAULT_PROTOCOLS, stone, new Set(done));

describe('the defaults', () => {
  test('there is one for each purpose, each starting with whether it is diamond', () => {
    expect(protocols.safeParse(DEFAULT_PROTOCOLS).success).toBe(true);
    expect(DEFAULT_PROTOCOLS.map((one) => one.purpose)).toEqual([...PROTOCOL_PURPOSES]);
    for (const one of DEFAULT_PROTOCOLS) expect(one.steps[0]).toEqual({ method: 'raman', maySkip: false });
  });
  test('settings of older casebooks get them, each its own copy', () => {
    const [a, b] = [houseSettings.parse({}), houseSettings.parse({})];
    expect(a.protocols).toEqual(DEFAULT_PROTOCOLS);
    expect(a.protocols[0]!.steps).not.toBe(b.protocols[0]!.steps);
  });
});

test('what a house may set is checked: no test twice, long-wave before short-wave, one protocol for a purpose', () => {
  const steps = (...methods: MethodId[]) => ({ purpose: 'loose', name: 'ours', steps: methods.map((method) => ({ method, maySkip: false })) });
  expect(protocol.safeParse(steps('raman', 'infrared')).success).toBe(true);
  expect(protocol.safeParse(steps('raman', 'raman')).error?.issues[0]?.message).toContain('Raman stands in this protocol twice');
  expect(protocol.safeParse(steps('fluorescence-short-wave', 'fluorescence-long-wave')).error?.issues[0]?.message).toContain('Long-wave fluorescence belongs before');
  expect(protocol.safeParse(steps()).success).toBe(false);
  expect(protocols.safeParse(DEFAULT_PROTOCOLS.slice(1)).error?.issues[0]?.message).toContain('one protocol for loose');
  expect(houseSettings.safeParse({ protocols: [] }).success).toBe(false);
});

test('colour goes before setting, and a lot before both settings', () => {
  expect(purposeOf(LOOSE)).toBe('loose');
  expect(purposeOf({ ...LOOSE, mounted: true, kind: 'jewellery' })).toBe('mounted');
  expect(purposeOf({ ...LOOSE, kind: 'lot' })).toBe('lot');
  expect(purposeOf({ ...LOOSE, mounted: true, kind: 'jewellery', colourClass: 'brown' })).toBe('coloured');
  expect(purposeOf({ ...LOOSE, colourClass: 'unknown' })).toBe('loose');
});

describe('what is still to do', () => {
  test('the first that is asked for is next; what may be skipped is never next', () => {
    expect(state(LOOSE).next).toBe('raman');
    const later = state(LOOSE, 'raman', 'microscopy', 'fluorescence-long-wave', 'fluorescence-short-wave', 'phosphorescence', 'infrared', 'photoluminescence');
    expect(later.next).toBeNull();
    expect(later.steps.find((step) => step.method === 'growth-pattern')!.state).toBe('may-skip');
    expect(state(LOOSE, 'raman', 'growth-pattern').steps.map((step) => step.state)).toEqual(['done', 'next', 'open', 'open', 'open', 'open', 'open', 'done', 'may-skip', 'may-skip', 'may-skip', 'may-skip']);
  });
  test('a luminescence spectrum answers for Raman', () => {
    const { steps, asks, next } = state(LOOSE, 'photoluminescence');
    expect(steps[0]).toMatchObject({ method: 'raman', state: 'may-skip' });
    expect(asks).not.toContain('raman');
    expect(next).toBe('microscopy');
  });
  test('what the stone forbids is not asked for, and says why', () => {
    const closed = state({ ...LOOSE, mounted: true, setting: 'closed-back', kind: 'jewellery' });
    expect(closed.steps.find((step) => step.method === 'infrared')).toEqual({ method: 'infrared', state: 'not-possible', why: 'the setting is closed' });
    const small = state({ ...LOOSE, weightCt: 0.008 });
    expect(small.asks).not.toContain('infrared');
    expect(small.steps.find((step) => step.method === 'infrared')!.why).toBe('the stone is too small');
  });
  test('a house without a protocol for the purpose is a fault', () => {
    expect(() => protocolStateOf(DEFAULT_PROTOCOLS.filter((one) => one.purpose !== 'loose'), LOOSE, new Set())).toThrow('no protocol');
  });
});
