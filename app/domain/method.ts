import { z } from 'zod';

/** The tests that a stone can be given. */
export const METHOD_IDS = [
  'raman', 'photoluminescence', 'absorption', 'infrared', 'ultraviolet-transmission',
  'fluorescence-long-wave', 'fluorescence-short-wave', 'phosphorescence', 'growth-pattern', 'crossed-polarisers',
  'magnet', 'microscopy', 'thermal-probe', 'electrical-conductivity', 'specific-gravity', 'refractive-index',
] as const;
export const methodId = z.enum(METHOD_IDS);
export type MethodId = z.infer<typeof methodId>;

export type Hazard = 'laser' | 'ultraviolet' | 'cryogen';

export type MethodInfo = {
  readonly id: MethodId;
  readonly name: string;
  /** What a run brings home: instrument files that hold curves, or what a person saw. */
  readonly yields: 'spectrum' | 'observation';
  readonly hazards: readonly Hazard[];
  /** False where metal or a closed back forbids the test. */
  readonly possibleMounted: 'yes' | 'open-back' | 'no';
  /** One line under the name in the list. */
  readonly tells: string;
};

/** Which test is possible on a mounted stone: common practice, no source. */
export const METHODS: Readonly<Record<MethodId, MethodInfo>> = {
  raman: { id: 'raman', name: 'Raman', yields: 'spectrum', hazards: ['laser'], possibleMounted: 'yes', tells: 'whether it is diamond' },
  photoluminescence: { id: 'photoluminescence', name: 'Photoluminescence', yields: 'spectrum', hazards: ['laser', 'cryogen'], possibleMounted: 'yes', tells: 'optical centres, diamond line' },
  absorption: { id: 'absorption', name: 'Absorption, ultraviolet to near infrared', yields: 'spectrum', hazards: ['ultraviolet'], possibleMounted: 'open-back', tells: 'cape lines, colour bands' },
  infrared: { id: 'infrared', name: 'Infrared', yields: 'spectrum', hazards: [], possibleMounted: 'open-back', tells: 'type, nitrogen, hydrogen, boron' },
  'ultraviolet-transmission': { id: 'ultraviolet-transmission', name: 'Ultraviolet transmission', yields: 'spectrum', hazards: ['ultraviolet'], possibleMounted: 'open-back', tells: 'type I or II, screening only' },
  'fluorescence-long-wave': { id: 'fluorescence-long-wave', name: 'Fluorescence, long-wave ultraviolet', yields: 'observation', hazards: ['ultraviolet'], possibleMounted: 'yes', tells: 'colour and strength at 365 nm' },
  'fluorescence-short-wave': { id: 'fluorescence-short-wave', name: 'Fluorescence, short-wave ultraviolet', yields: 'observation', hazards: ['ultraviolet'], possibleMounted: 'yes', tells: 'colour and strength at 254 nm' },
  phosphorescence: { id: 'phosphorescence', name: 'Phosphorescence', yields: 'observation', hazards: ['ultraviolet'], possibleMounted: 'yes', tells: 'after-glow, colour and seconds' },
  'growth-pattern': { id: 'growth-pattern', name: 'Growth pattern, deep ultraviolet', yields: 'observation', hazards: ['ultraviolet'], possibleMounted: 'yes', tells: 'sectors, striations, dislocation network' },
  'crossed-polarisers': { id: 'crossed-polarisers', name: 'Crossed polarisers', yields: 'observation', hazards: [], possibleMounted: 'open-back', tells: 'strain pattern' },
  magnet: { id: 'magnet', name: 'Magnet', yields: 'observation', hazards: [], possibleMounted: 'no', tells: 'metallic inclusions' },
  microscopy: { id: 'microscopy', name: 'Microscopy', yields: 'observation', hazards: [], possibleMounted: 'yes', tells: 'inclusions, graining, inscription' },
  'thermal-probe': { id: 'thermal-probe', name: 'Thermal probe', yields: 'observation', hazards: [], possibleMounted: 'yes', tells: 'diamond-like or not' },
  'electrical-conductivity': { id: 'electrical-conductivity', name: 'Electrical conductivity', yields: 'observation', hazards: [], possibleMounted: 'yes', tells: 'boron, moissanite' },
  'specific-gravity': { id: 'specific-gravity', name: 'Specific gravity', yields: 'observation', hazards: [], possibleMounted: 'no', tells: 'simulants' },
  'refractive-index': { id: 'refractive-index', name: 'Refractive index', yields: 'observation', hazards: [], possibleMounted: 'yes', tells: 'simulants' },
};
