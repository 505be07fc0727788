import type { MethodId } from '../domain/method.ts';
import type { Protocol, ProtocolPurpose } from './protocol.ts';

/** A question mark before a method says that it may be skipped. */
function steps(text: string): Protocol['steps'] {
  return text.split(' ').map((word) => ({ method: word.replace('?', '') as MethodId, maySkip: word.startsWith('?') }));
}
const of = (purpose: ProtocolPurpose, name: string, text: string): Protocol => ({ purpose, name, steps: steps(text) });

/** Long-wave before short-wave, the quick before the slow, what looks at the skin beside what looks at the bulk (common practice, no source). */
export const DEFAULT_PROTOCOLS: readonly Protocol[] = [
  of('loose', 'loose colourless', 'raman microscopy fluorescence-long-wave fluorescence-short-wave phosphorescence infrared photoluminescence ?growth-pattern ?crossed-polarisers ?absorption ?ultraviolet-transmission ?magnet'),
  of('mounted', 'mounted', 'raman microscopy fluorescence-long-wave fluorescence-short-wave phosphorescence photoluminescence ?growth-pattern ?infrared ?absorption'),
  of('lot', 'small stones', 'raman fluorescence-long-wave fluorescence-short-wave phosphorescence photoluminescence ?growth-pattern ?infrared ?ultraviolet-transmission'),
  of('coloured', 'coloured', 'raman microscopy fluorescence-long-wave fluorescence-short-wave absorption infrared photoluminescence ?growth-pattern'),
];
