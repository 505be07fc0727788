import { z } from 'zod';

export const GLOW_COLOURS = ['none', 'blue', 'greenish-blue', 'green', 'yellow-green', 'yellow', 'orange', 'red', 'pink', 'violet', 'white', 'uneven'] as const;
export const GLOW_STRENGTHS = ['inert', 'very-weak', 'weak', 'moderate', 'strong', 'very-strong'] as const;

const glow = { colour: z.enum(GLOW_COLOURS), strength: z.enum(GLOW_STRENGTHS), exposureSeconds: z.number().min(0).max(3600).optional() };
const note = z.string().max(2000).optional();

/** What a person saw, typed by method; a free sentence may go with each. */
export const observation = z.discriminatedUnion('method', [
  z.object({ method: z.literal('fluorescence-long-wave'), ...glow, note }),
  z.object({ method: z.literal('fluorescence-short-wave'), ...glow, note }),
  z.object({ method: z.literal('phosphorescence'), ...glow, seconds: z.number().min(0).max(3600), note }),
  z.object({
    method: z.literal('growth-pattern'), note,
    pattern: z.enum(['octahedral-zoning', 'dislocation-network', 'striations', 'cuboctahedral-sectors', 'layer-boundary', 'none-seen', 'other']),
  }),
  z.object({ method: z.literal('crossed-polarisers'), pattern: z.enum(['banded', 'mottled', 'tatami', 'columnar', 'none-seen', 'other']), note }),
  z.object({ method: z.literal('magnet'), response: z.enum(['none', 'weak', 'clear']), note }),
  z.object({
    method: z.literal('microscopy'), note,
    features: z.array(z.enum(['metallic-flux', 'pinpoints', 'crystal-inclusion', 'feather', 'mantle-mineral', 'graphitised-fracture', 'green-graining', 'graining', 'inscription', 'facet-doubling', 'gas-bubbles', 'nothing-seen'])).min(1),
  }),
  z.object({ method: z.literal('thermal-probe'), reading: z.enum(['diamond-like', 'not-diamond-like']), note }),
  z.object({ method: z.literal('electrical-conductivity'), reading: z.enum(['conducts', 'does-not-conduct']), note }),
  z.object({ method: z.literal('specific-gravity'), value: z.number().min(1).max(9), uncertainty: z.number().min(0).max(1), note }),
  /** By refractometer (over its scale where no edge is seen) or by reflectivity, which gives a number for diamond as well. */
  z.object({
    method: z.literal('refractive-index'), by: z.enum(['refractometer', 'reflectivity']), reading: z.enum(['over-scale', 'value']), note,
    value: z.number().min(1.3).max(3.5).optional(), uncertainty: z.number().min(0).max(0.5).optional(),
  }).refine((seen) => seen.reading === 'over-scale' || seen.value !== undefined, { path: ['value'], message: 'Write the index that was read, or choose that it was above the scale.' }),
  z.object({ method: z.literal('ultraviolet-transmission'), reading: z.enum(['opaque', 'partly', 'transparent']), note }),
]);
export type Observation = z.infer<typeof observation>;
export type ObservedMethod = Observation['method'];
