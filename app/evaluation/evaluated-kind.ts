import type { Observation } from '../domain/observation.ts';
import type { StoneKind } from '../spectra/simulate/stone.ts';

export const TRUTHS = ['natural', 'natural-treated', 'cvd', 'hpht', 'layer', 'not-diamond'] as const;
/** What a made-up stone is. 'layer': a CVD layer on a natural core; it counts as laboratory-grown where errors are counted. */
export type Truth = (typeof TRUTHS)[number];
export const TRUTH_WORDS: Readonly<Record<Truth, string>> = {
  natural: 'natural', 'natural-treated': 'natural, treated', cvd: 'CVD-grown', hpht: 'HPHT-grown', layer: 'CVD layer on natural', 'not-diamond': 'not diamond',
};

export type Colour = Extract<Observation, { method: 'phosphorescence' }>['colour'];
export type Strength = Extract<Observation, { method: 'phosphorescence' }>['strength'];
export type Pattern = Extract<Observation, { method: 'growth-pattern' }>['pattern'];
export type Strain = Extract<Observation, { method: 'crossed-polarisers' }>['pattern'];
export type Feature = Extract<Observation, { method: 'microscopy' }>['features'][number];

/** Weights beside what they weigh; they need not add up to 1. */
export type Weighted<T> = readonly (readonly [number, T])[];

/** How often each thing is found in stones of one kind when the test is made with a good signal. */
export type EvaluatedKind = {
  readonly id: string;
  readonly truth: Truth;
  /** Share of the run. Rare kinds are enriched: the run looks for errors, it does not copy a market. */
  readonly share: number;
  /** The documented trap this kind stands for, or null. */
  readonly trap: string | null;
  readonly source: string;
  /** Chance of each finding's code in a luminescence and in an absorption spectrum. */
  readonly luminescence: Readonly<Record<string, number>>;
  readonly absorption: Readonly<Record<string, number>>;
  /** What an infrared curve says, as codes without their prefix. */
  readonly infrared: Weighted<readonly string[]>;
  readonly transmission: Weighted<'opaque' | 'partly' | 'transparent'>;
  readonly lamps: Weighted<readonly [Colour, Strength, Colour, Strength]>;
  readonly afterGlow: Weighted<readonly [Colour, number]>;
  readonly pattern: Weighted<Pattern>;
  readonly strain: Weighted<Strain>;
  readonly magnet: Weighted<'none' | 'weak' | 'clear'>;
  readonly features: Weighted<Feature>;
  readonly conducts: number;
  /** Kind of the spectra simulator with the same physics, where there is one. */
  readonly simulated?: StoneKind;
};

export const INERT = ['none', 'inert', 'none', 'inert'] as const;
export const NO_GLOW = ['none', 0] as const;
