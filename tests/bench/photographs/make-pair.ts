import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { photographPiece, type SimulatedView } from '../../../app/images/simulate/photograph-piece.ts';
import { loadSharp } from '../../../main/images/load-sharp.ts';
import { benchPiece, HEIGHT, SHIFT, WIDTH } from './piece.ts';

/** Writes the pair of photographs into the folder named on the command line. */
const folder = process.argv[2]!;
const piece = benchPiece();
async function write(name: string, view: SimulatedView): Promise<void> {
  const { data } = photographPiece(piece, view);
  writeFileSync(path.join(folder, name), await loadSharp()(data, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } }).jpeg({ quality: 92 }).toBuffer());
}
await write('long-wave.jpg', { light: 'long-wave', seed: 1 });
await write('short-wave.jpg', { light: 'short-wave', seed: 2, stops: 0.5, shift: SHIFT });
