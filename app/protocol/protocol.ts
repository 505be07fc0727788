import { z } from 'zod';
import { METHODS, methodId } from '../domain/method.ts';

export const PROTOCOL_PURPOSES = ['loose', 'mounted', 'lot', 'coloured'] as const;
/** What stones a protocol is for. Coloured ones have their own, however they are set. */
export const protocolPurpose = z.enum(PROTOCOL_PURPOSES);
export type ProtocolPurpose = z.infer<typeof protocolPurpose>;

export const PURPOSE_WORDS: Readonly<Record<ProtocolPurpose, string>> = {
  loose: 'loose, colourless', mounted: 'mounted, colourless', lot: 'lots of small stones', coloured: 'coloured stones',
};

export const protocolStep = z.strictObject({
  method: methodId,
  /** May be left out without being named as missing. */
  maySkip: z.boolean(),
});

/** Which tests a purpose asks for, in their order. */
export const protocol = z.strictObject({
  purpose: protocolPurpose,
  name: z.string().trim().min(1, 'Give the protocol a name.').max(80),
  steps: z.array(protocolStep).min(1, 'A protocol asks for at least one test.').max(30),
}).superRefine(({ steps }, issues) => {
  const seen = new Set<string>();
  steps.forEach(({ method }, i) => {
    if (seen.has(method)) issues.addIssue({ code: 'custom', path: ['steps', i, 'method'], message: `${METHODS[method].name} stands in this protocol twice.` });
    seen.add(method);
  });
  const at = (method: string): number => steps.findIndex((step) => step.method === method);
  if (at('fluorescence-long-wave') > at('fluorescence-short-wave') && at('fluorescence-short-wave') >= 0) {
    issues.addIssue({ code: 'custom', path: ['steps'], message: 'Long-wave fluorescence belongs before short-wave: an after-glow would add to what is seen.' });
  }
});
export type Protocol = z.infer<typeof protocol>;

/** One protocol for each purpose. */
export const protocols = z.array(protocol).superRefine((list, issues) => {
  for (const purpose of PROTOCOL_PURPOSES) if (list.filter((one) => one.purpose === purpose).length !== 1) issues.addIssue({ code: 'custom', message: `There must be one protocol for ${PURPOSE_WORDS[purpose]}.` });
});
