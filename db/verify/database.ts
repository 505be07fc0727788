import type { Layout } from './layout.ts';
import { faultyPart, soundPart, type Part } from './part.ts';
import { foundInOrder, type Runner } from './pieces.ts';
import type { VerifyWhat } from './verify-casebook.ts';

/** What is defined in the file, and SQLite's own checks table by table; with `wholeFile` of everything in one go, and by tables only to name what is wrong. */
export async function verifyDatabase({ tables }: Layout, { wholeFile, strange }: Pick<VerifyWhat, 'wholeFile' | 'strange'>, runner: Runner): Promise<Part> {
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
  if (firstDangling !== null) return faultyPart('database', checked, firstDangling);
  const [first] = strange;
  if (first === undefined) return soundPart('database', checked);
  return faultyPart('database', checked, `${first}${strange.length > 1 ? ` ${strange.length - 1} more definitions differ.` : ''} Someone worked on the file from outside.`);
}
