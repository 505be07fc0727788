import { z } from 'zod';

export const RULE_IDS = [
  'diamond-first', 'not-diamond', 'diamond-contradiction', 'colour-outside', 'colour-not-stated', 'contradiction',
  'one-diagnostic', 'two-strong', 'strong-and-two-supporting', 'not-enough', 'layer-suspected', 'layer-not-looked-for', 'documented-together',
  'treatment-suspected', 'treatment-question', 'never-alone', 'instrument-in-order', 'setting-allows', 'set-aside', 'not-in-table',
] as const;
export const ruleId = z.enum(RULE_IDS);
export type RuleId = z.infer<typeof ruleId>;

/** The rules of judgement, each in one sentence that can be read aloud. The functions beside this file carry them out. */
export const RULE_BOOK: Readonly<Record<RuleId, string>> = {
  'diamond-first': 'Nothing is said of origin before the diamond check has passed.',
  'not-diamond': 'Not diamond needs one diagnostic finding, one strong finding by laser, or two strong ones from two methods.',
  'diamond-contradiction': 'Where one finding proves diamond and another an imitation, the check is repeated and nothing is concluded.',
  'colour-outside': 'The rules of origin hold for colourless to near colourless stones; others leave this screening.',
  'colour-not-stated': 'Without a stated colour class no rule of origin may be applied.',
  contradiction: 'Where findings of weight stand on both sides, no rule chooses between them.',
  'one-diagnostic': 'A nature needs one diagnostic finding, and no unresolved contradiction.',
  'two-strong': 'A nature needs two strong findings from independent methods, and no unresolved contradiction.',
  'strong-and-two-supporting': 'A nature needs one strong finding with two supporting ones from other methods, and no unresolved contradiction.',
  'not-enough': 'With less than that, a stone stays undetermined.',
  'layer-suspected': 'Boron, silicon or a line of CVD growth beside natural bulk raises the suspicion of a grown layer on a natural core.',
  'layer-not-looked-for': 'A natural origin is not stated before a clear photoluminescence, or growth pattern with infrared, has looked for a grown layer.',
  'documented-together': 'A nature is not stated while all that speaks for it was documented together in a stone of another nature.',
  'treatment-suspected': 'A natural stone with a finding of treatment leaves this screening.',
  'treatment-question': 'One line of treatment beside aggregated nitrogen is a question and no verdict.',
  'never-alone': 'Silicon-vacancy alone, type IIa alone, ultraviolet transparency alone and absence alone never decide.',
  'instrument-in-order': 'What an instrument found that was not in order on the day is listed and does not count.',
  'setting-allows': 'What was read by a test that the setting forbids may be the mount’s; it is listed as doubtful and does not count.',
  'set-aside': 'What the examiner set aside is listed and does not count.',
  'not-in-table': 'A finding that the evidence table does not know has no weight.',
};
