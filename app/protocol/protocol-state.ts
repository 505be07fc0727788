import { z } from 'zod';
import type { ColourClass } from '../domain/colour-class.ts';
import { METHODS, methodId } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { isBarred, isTooSmall } from '../evidence/possible-methods.ts';
import type { StoneSetting } from '../evidence/possible-methods.ts';
import type { Protocol, ProtocolPurpose } from './protocol.ts';

/** done · next: the first that is still to do · open: to do later · may-skip: not done, and may be left out · not-possible: the stone forbids it */
export const PROTOCOL_STEP_STATES = ['done', 'next', 'open', 'may-skip', 'not-possible'] as const;
export const protocolState = z.object({
  name: z.string(),
  steps: z.array(z.object({ method: methodId, state: z.enum(PROTOCOL_STEP_STATES), why: z.string() })),
  /** The first test that is still asked for, or null. */
  next: methodId.nullable(),
  /** What it asks for of this stone, in its order: neither skippable nor impossible. */
  asks: z.array(methodId),
});
export type ProtocolState = z.infer<typeof protocolState>;

export type ProtocolStone = StoneSetting & { readonly colourClass: ColourClass; readonly kind: 'loose' | 'jewellery' | 'lot' };

/** Which protocol a stone falls under: colour first, then how it lies. A stone whose colour is not stated goes with the colourless. */
export function purposeOf({ colourClass, kind, mounted }: ProtocolStone): ProtocolPurpose {
  if (colourClass !== 'colourless' && colourClass !== 'unknown') return 'coloured';
  if (kind === 'lot') return 'lot';
  return mounted ? 'mounted' : 'loose';
}

function whyNot(method: MethodId, stone: ProtocolStone): string {
  if (isTooSmall(method, stone)) return 'the stone is too small';
  if (!isBarred(method, stone)) return '';
  return METHODS[method].possibleMounted === 'no' ? 'not on a mounted stone' : stone.setting === 'closed-back' ? 'the setting is closed' : 'the setting is not stated as open';
}

/**
 * How far a stone has come in the protocol of its purpose. `done` are the methods with a run that counts.
 * Throws where `protocols` has none for the purpose, which house settings never allow.
 */
export function protocolStateOf(protocols: readonly Protocol[], stone: ProtocolStone, done: ReadonlySet<MethodId>): ProtocolState {
  const purpose = purposeOf(stone);
  const own = protocols.find((one) => one.purpose === purpose);
  if (own === undefined) throw new Error(`no protocol for ${purpose}`);
  // A luminescence spectrum shows the diamond line as well; where it did not, the diamond check stays open and asks for Raman itself.
  const answered = (method: MethodId): boolean => method === 'raman' && done.has('photoluminescence');
  const possible = own.steps.map(({ method, maySkip }) => ({ method, maySkip: maySkip || answered(method), why: whyNot(method, stone) }));
  const next = possible.find(({ method, maySkip, why }) => why === '' && !maySkip && !done.has(method))?.method ?? null;
  return {
    name: own.name, next,
    steps: possible.map(({ method, maySkip, why }) => ({
      method, why, state: done.has(method) ? 'done' : why !== '' ? 'not-possible' : method === next ? 'next' : maySkip ? 'may-skip' : 'open',
    })),
    asks: possible.filter(({ maySkip, why }) => !maySkip && why === '').map(({ method }) => method),
  };
}
