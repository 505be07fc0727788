import { countWords, listWords } from '../report/count-words.ts';
import type { MapGround, Mark } from './mark.ts';

export type MapState = { readonly name: string; readonly ground: MapGround; readonly marks: readonly Mark[] };

const sameGround = (a: MapGround, b: MapGround): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What a version of a map changed against the one before it, in words; null before stands for a new map. */
export function mapChanges(before: MapState | null, after: MapState): string {
  if (before === null) return `made, with ${countWords(after.marks.length, 'mark')}`;
  const old = new Map(before.marks.map((mark) => [mark.id, mark]));
  const kept = after.marks.flatMap((mark) => { const was = old.get(mark.id); return was ? [{ was, mark }] : []; });
  const count = (differs: (was: Mark, now: Mark) => boolean): number => kept.filter(({ was, mark }) => differs(was, mark)).length;
  const counts = [
    ['placed', after.marks.length - kept.length], ['removed', before.marks.length - kept.length],
    ['moved', count((a, b) => a.x !== b.x || a.y !== b.y || a.radius !== b.radius)],
    ['tied otherwise', count((a, b) => a.stoneId !== b.stoneId)], ['numbered otherwise', count((a, b) => a.number !== b.number)],
  ] as const;
  const said = [
    ...(before.name === after.name ? [] : [`named “${after.name}”`]),
    ...(sameGround(before.ground, after.ground) ? [] : ['placed on another picture']),
    ...counts.filter(([, n]) => n > 0).map(([word, n]) => `${n} ${word}`),
  ];
  return said.length === 0 ? 'nothing' : listWords(said);
}
