import type { Layout } from './layout.ts';
import { faultyPart, soundPart, type Part } from './part.ts';
import { foundInOrder, type Runner } from './pieces.ts';

/** SQLite's own checks table by table; with `wholeFile` of everything in one go, and by tables only to name what is wrong. */
export async function verifyDatabase({ tables }: Layout, wholeFile: boolean, runner: Runner): Promise<Part> {
  const elsewhere = wholeFile ? (await runner.run({ kind: 'file', table: null, sound: false })).damage : null;
  const sound = wholeFile && elsewhere === null;
  let checked = 0;
  let firstDangling: string | null = null;
  for await (const { damage, dangling } of foundInOrder(runner, tables.map((table) => ({ kind: 'file', table, sound }) as const))) {
    if (damage !== null) return faultyPart('database', checked, `The table ${tables[checked]!} is damaged: ${damage}.`);
    firstDangling ??= dangling;
    checked += 1;
  }
  if (elsewhere !== null) return faultyPart('database', checked, `The file is damaged: ${elsewhere}.`);
  return firstDangling === null ? soundPart('database', checked) : faultyPart('database', checked, firstDangling);
}
