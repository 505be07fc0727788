import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { bearsOnOrigin } from './method-outcomes.ts';
import { barredMethods, isPossible, isTooSmall } from './possible-methods.ts';
import type { ProposalInput } from './proposal-input.ts';
import { capitalised, listed, METHOD_WORDS } from './sentences.ts';

const words = (methods: readonly MethodId[]): string => listed(methods.map((method) => METHOD_WORDS[method]));

/** What the mount took away: the tests by name, and that the statement is worth less for it. */
function mountedSentences({ stone }: ProposalInput, done: ReadonlySet<MethodId>, concludes: boolean): string[] {
  const barred = barredMethods(stone).filter((method) => !done.has(method));
  if (!stone.mounted || barred.length === 0) return [];
  const which = stone.setting === null ? ' (setting not stated, taken as closed)' : stone.setting === 'closed-back' ? ' (closed back)' : '';
  const ofOrigin = METHOD_IDS.filter(bearsOnOrigin);
  const lost = ofOrigin.filter((method) => barred.includes(method));
  const treatment = (['infrared', 'absorption'] as const).every((method) => barred.includes(method)) ? ', and treatment was not looked for' : '';
  return [
    `Not possible on this mounted stone${which}: ${words(barred)}.`,
    ...(concludes && lost.length > 0 ? [`Because the stone is mounted, ${lost.length} of the ${ofOrigin.length} tests that bear on its nature could not be made${treatment}: the conclusion says less than one on a loose stone.`] : []),
  ];
}

/** What was not done or cannot be, in sentences. Methods that say nothing of origin or diamond are not missed, unless the protocol asks for them. */
export function missingSentences(input: ProposalInput, done: ReadonlySet<MethodId>, isOpen: boolean): string[] {
  const { stone, protocol } = input;
  const undone = METHOD_IDS.filter((method) => bearsOnOrigin(method) && !done.has(method) && isPossible(method, stone));
  const here = new Set(input.methodsAvailable);
  const notHere = undone.filter((method) => !here.has(method));
  const asked = protocol === undefined ? [] : protocol.asks.filter((method) => !done.has(method) && isPossible(method, stone));
  const notDone = undone.filter((method) => here.has(method) && !asked.includes(method));
  const small = METHOD_IDS.filter((method) => bearsOnOrigin(method) && !done.has(method) && isTooSmall(method, stone));
  return [
    ...mountedSentences(input, done, !isOpen),
    ...(small.length > 0 ? [`The stone is too small for ${words(small)}.`] : []),
    ...(asked.length > 0 ? [`The protocol “${protocol!.name}” asks for ${words(asked)}: not done.`] : []),
    ...(notDone.length > 0 ? [`Not done: ${words(notDone)}.`] : []),
    ...(isOpen && notHere.length > 0 ? [`No instrument here for ${words(notHere)}: another laboratory could do ${notHere.length === 1 ? 'it' : 'them'}.`] : []),
  ].map(capitalised);
}
