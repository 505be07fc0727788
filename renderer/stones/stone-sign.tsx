import { SHOWN_LATER } from '../../app/conclusions/withhold.ts';
import type { StoneSummary } from '../../app/contract/cases.ts';
import { Glyph } from '../look/glyph.tsx';
import { conclusionWords, isWithheld } from './conclusion-words.ts';
import { shownConclusion } from './shown-conclusion.ts';
import { STAGE_WORDS } from './stage-words.ts';

type Signed = Pick<StoneSummary, 'label' | 'position' | 'conclusion' | 'stage'>;

/** "A-1: natural diamond, second person to confirm" */
export const stoneTitle = (stone: Signed): string => `${stone.label}: ${(isWithheld(stone) ? [SHOWN_LATER] : [conclusionWords(stone, ''), STAGE_WORDS[stone.stage]]).filter(Boolean).join(', ')}`;

/** A stone as every tree of a case shows it: its sign, its name, and a mark where a second person's word is missing or against it. */
export function StoneSign({ stone, after = '' }: { readonly stone: Signed; readonly after?: string }) {
  return (
    <>
      <Glyph of={shownConclusion(stone)} />
      <span className="one-line grow">{stone.label}{stone.position ? <span className="quiet"> {stone.position}</span> : null}{after}</span>
      {stone.stage === 'concluded' ? <span className="quiet">?</span> : stone.stage === 'disagreed' ? <span className="warn">!</span> : null}
    </>
  );
}
