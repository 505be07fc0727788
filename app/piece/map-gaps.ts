import { countWords, listWords } from '../report/count-words.ts';
import type { Mark } from './mark.ts';

export type MapGaps = {
  /** Stones that no map of the piece shows, by label. */
  readonly unmarked: readonly string[];
  /** Numbers of marks that are tied to no stone. */
  readonly untied: readonly number[];
};

/** What is still open on the maps of a piece. A stone that one map shows need not be on the others. */
export function mapGaps(maps: readonly (readonly Mark[])[], stones: readonly { readonly id: string; readonly label: string }[]): MapGaps {
  const shown = new Set(maps.flatMap((marks) => marks.map((mark) => mark.stoneId)));
  return {
    unmarked: stones.filter((stone) => !shown.has(stone.id)).map((stone) => stone.label),
    untied: maps.flatMap((marks) => marks.filter((mark) => mark.stoneId === null).map((mark) => mark.number)).toSorted((a, b) => a - b),
  };
}

const NAMED = 12;
const named = (words: readonly string[]): string => (words.length <= NAMED ? listWords(words) : `${words.slice(0, NAMED).join(', ')} and ${words.length - NAMED} more`);

/** The gaps in sentences; empty where every stone has its mark. */
export function gapSentences({ unmarked, untied }: MapGaps): string[] {
  return [
    ...(unmarked.length === 0 ? [] : [`${countWords(unmarked.length, 'stone')} without a mark: ${named(unmarked)}.`]),
    ...(untied.length === 0 ? [] : [`${countWords(untied.length, 'mark')} without a stone: ${named(untied.map(String))}.`]),
  ];
}
