import type { ColourClass } from '../domain/colour-class.ts';
import type { MethodId } from '../domain/method.ts';
import type { StoneSetting } from './possible-methods.ts';
import type { WeighedFinding } from './weighed-finding.ts';

/** All that a proposal is made from. */
export type ProposalInput = {
  readonly stone: StoneSetting & { readonly colourClass: ColourClass };
  readonly findings: readonly WeighedFinding[];
  /** Methods with a run on this stone. */
  readonly methodsDone: readonly MethodId[];
  /** Methods the laboratory has an instrument for, or that need none. */
  readonly methodsAvailable: readonly MethodId[];
  /** The second person did not agree with the newest conclusion. */
  readonly disputed?: boolean;
  /** The house's protocol for this stone: its name, and the methods it asks for in their order. */
  readonly protocol?: { readonly name: string; readonly asks: readonly MethodId[] };
};
