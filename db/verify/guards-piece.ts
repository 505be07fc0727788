import { expectedGuards, foreignTriggers, guardsNotInPlace } from '../guards.ts';
import type { ReadDb } from '../handle.ts';
import { faultyPart, soundPart, type Part } from './part.ts';

/** Whether the guards of the evidence tables are in place, and were when the casebook was opened. */
export function guardsPiece(db: ReadDb, restoredAtOpening: readonly string[]): Part {
  const all = expectedGuards().length;
  const present = db.all<{ name: string; sql: string }>(`SELECT name, sql FROM sqlite_master WHERE type = 'trigger'`);
  const missing = guardsNotInPlace(present);
  const [first] = missing;
  if (first !== undefined) return faultyPart('guards', all - missing.length, `The guard ${first} is not in place${missing.length > 1 ? `, nor are ${missing.length - 1} others` : ''}.`);
  const [foreign] = foreignTriggers(present);
  if (foreign !== undefined) return faultyPart('guards', all, `The trigger ${foreign} is not Culet’s: it may change what is written. Someone worked on the file from outside.`);
  const [takenOut] = foreignTriggers(restoredAtOpening.map((name) => ({ name })));
  if (takenOut !== undefined) {
    return faultyPart('guards', all, `The trigger ${takenOut}, which is not Culet’s, stood in the file and was taken out when the casebook was opened: someone worked on the file from outside.`);
  }
  const [restored] = restoredAtOpening;
  if (restored !== undefined) {
    return faultyPart('guards', all, `The guard ${restored} had been taken away and was put back when the casebook was opened: someone worked on the file from outside.`);
  }
  return soundPart('guards', all);
}
