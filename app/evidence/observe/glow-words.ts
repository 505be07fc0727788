import { GLOW_STRENGTHS } from '../../domain/observation.ts';
import type { GLOW_COLOURS } from '../../domain/observation.ts';

export type GlowColour = (typeof GLOW_COLOURS)[number];
export type GlowStrength = (typeof GLOW_STRENGTHS)[number];
export type Glow = { readonly colour: GlowColour; readonly strength: GlowStrength };

export const glowRank = (glow: Glow): number => GLOW_STRENGTHS.indexOf(glow.strength);

/** Inert when either field says so: a colour without strength, or a strength without colour, is no glow that was seen. */
export const isInert = (glow: Glow): boolean => glow.strength === 'inert' || glow.colour === 'none';

/** 'weak orange', 'inert'. */
export const glowWords = (glow: Glow): string => (isInert(glow) ? 'inert' : `${glow.strength.replace('-', ' ')} ${glow.colour}`);
