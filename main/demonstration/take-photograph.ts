import type { Scenario, ScenarioItem, ScenarioStone } from './scenario-schema.ts';
import { drawPiece, type Glow, type Piece, type PieceLight } from './draw-piece.ts';
import { observationOf } from './observation-of.ts';
import { writePng } from './write-png.ts';

export type TakenPhotograph = { readonly name: string; readonly mediaType: 'image/png'; readonly bytes: Uint8Array; readonly caption: string; readonly light: PieceLight };

const INERT: Glow = { colour: 'none', strength: 'inert' };

function glowOf(scenario: Scenario, stone: ScenarioStone, light: PieceLight): Glow {
  const method = light === 'short-wave' ? 'fluorescence-short-wave' : 'fluorescence-long-wave';
  const seen = observationOf(scenario, stone, method);
  return seen !== null && 'colour' in seen ? seen : INERT;
}

/** Stones of a lot that nobody listed lie in the picture all the same; more than these would only blur. */
const MOST_UNLISTED = 24;

function stonesOf(scenario: Scenario, item: ScenarioItem, light: PieceLight): Piece['stones'] {
  const listed = item.stones.map((stone) => ({ shape: stone.shape, glow: glowOf(scenario, stone, light) }));
  const unlisted = item.kind === 'lot' ? Math.max(0, Math.min(MOST_UNLISTED, (item.count ?? 0) - listed.length)) : 0;
  return [...listed, ...Array.from({ length: unlisted }, (_, i) => ({ shape: 'round', glow: { colour: 'blue', strength: i % 3 === 0 ? 'moderate' : 'weak' } as const }))];
}

/** A drawn photograph of an item: its stones glow as the observations of the scenario say. `seed` fixes how far they differ. */
export function takePhotograph(scenario: Scenario, item: ScenarioItem, label: string, shot: { readonly light: PieceLight; readonly caption: string }, seed: number): TakenPhotograph {
  const picture = drawPiece({ arrangement: item.arrangement, stones: stonesOf(scenario, item, shot.light), light: shot.light, seed });
  return { name: `item-${label}-${shot.light}.png`, mediaType: 'image/png', bytes: writePng(picture, `SIMULATED, ${scenario.marking}`), caption: `${shot.caption} (invented picture)`, light: shot.light };
}
