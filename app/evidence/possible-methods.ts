import { METHOD_IDS, METHODS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';

export type StoneSetting = { readonly mounted: boolean; readonly setting: 'open-back' | 'closed-back' | null };

/** Can this stone be given this test? A mounted stone whose setting is not stated is taken as closed. */
export function isPossible(method: MethodId, stone: StoneSetting): boolean {
  if (!stone.mounted) return true;
  const when = METHODS[method].possibleMounted;
  return when === 'yes' || (when === 'open-back' && stone.setting === 'open-back');
}

/** Methods of the list, in its order, that this stone cannot be given. */
export const impossibleMethods = (stone: StoneSetting): MethodId[] => METHOD_IDS.filter((method) => !isPossible(method, stone));
