import { simulatedPiece, type SimulatedPiece } from '../../../app/images/simulate/simulated-piece.ts';

export const [WIDTH, HEIGHT, COUNT] = [6000, 4000, 60] as const;
/** How the second photograph lies against the first. */
export const SHIFT = { dx: 23.4, dy: -11.7, degrees: 0.8 } as const;

/** An invented piece of sixty stones, of which the 8th and the 32nd answer to short-wave unlike the rest. */
export const benchPiece = (): SimulatedPiece => simulatedPiece({ width: WIDTH, height: HEIGHT, count: COUNT, seed: 41, odd: { 7: 1.2, 31: 1.3 } });
