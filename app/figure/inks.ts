import type { Ink } from './figure-model.ts';
import type { Rgb } from './drawing.ts';

/** The values of all colour roles on one kind of surface. */
export type Theme = {
  /** The page, the working surface, what stands out of it, and the selection: text may stand on each of them. */
  readonly grounds: { readonly ground: Rgb; readonly sheet: Rgb; readonly raised: Rgb; readonly soft: Rgb };
  readonly inks: Readonly<Record<Ink, Rgb>>;
};

/** Roles that are read as text and must reach 4.5:1 on every ground of their theme (WCAG 2.2, 1.4.3). */
export const TEXT_INKS = ['ink', 'ink2', 'ink3', 'accent', 'natural', 'cvd', 'hpht', 'warn'] as const satisfies readonly Ink[];

/** On paper the light inks stand on white. */
const LIGHT_INKS: Theme['inks'] = {
  ink: '#1c222d', ink2: '#4a5263', ink3: '#606877', line: '#dad4c6', line2: '#ece7db',
  accent: '#27508f', natural: '#1f6b6f', cvd: '#6a3d9c', hpht: '#945b0a', warn: '#8a3b2e',
};

export const THEMES: Readonly<Record<'light' | 'dark' | 'paper', Theme>> = {
  light: { grounds: { ground: '#f3efe6', sheet: '#fcfaf5', raised: '#ffffff', soft: '#e4eaf4' }, inks: LIGHT_INKS },
  dark: {
    grounds: { ground: '#12151a', sheet: '#191d24', raised: '#20252e', soft: '#23304a' },
    inks: {
      ink: '#e9e5db', ink2: '#b3b7bf', ink3: '#979da8', line: '#323843', line2: '#262b34',
      accent: '#8fb0e8', natural: '#6fc2c4', cvd: '#bd99ea', hpht: '#ddaa5a', warn: '#e39a8a',
    },
  },
  paper: { grounds: { ground: '#ffffff', sheet: '#ffffff', raised: '#ffffff', soft: '#ffffff' }, inks: LIGHT_INKS },
};
