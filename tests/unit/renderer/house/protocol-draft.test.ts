import { expect, test } from 'vitest';
import { DEFAULT_PROTOCOLS } from '../../../../app/protocol/default-protocols.ts';
import { moveStep, withStep } from '../../../../renderer/house/protocol-draft.ts';

const one = DEFAULT_PROTOCOLS[1]!;
const methods = (protocol: typeof one) => protocol.steps.map((step) => step.method);

test('a step moves by one place and stops at the ends', () => {
  expect(methods(moveStep(one, 1, -1)).slice(0, 2)).toEqual(['microscopy', 'raman']);
  expect(methods(moveStep(one, 0, 1)).slice(0, 2)).toEqual(['microscopy', 'raman']);
  expect(moveStep(one, 0, -1)).toBe(one);
  expect(moveStep(one, one.steps.length - 1, 1)).toBe(one);
});

test('a step is changed or left out; the protocol itself stays', () => {
  expect(withStep(one, 0, { method: 'raman', maySkip: true }).steps[0]).toEqual({ method: 'raman', maySkip: true });
  expect(methods(withStep(one, 0, null))[0]).toBe('microscopy');
  expect(one.steps[0]).toEqual({ method: 'raman', maySkip: false });
});
