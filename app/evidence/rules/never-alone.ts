import type { WeighedFinding } from '../weighed-finding.ts';

type Remark = { readonly applies: (counted: readonly WeighedFinding[]) => boolean; readonly sentence: string };

const has = (counted: readonly WeighedFinding[], code: RegExp): boolean => counted.some((finding) => code.test(finding.code));

/** Striking facts that people are tempted to decide by, and why they do not. */
const REMARKS: readonly Remark[] = [
  { applies: (c) => has(c, /^centre:SIV$/), sentence: 'Silicon-vacancy alone does not decide: it is known in CVD-grown, in HPHT-grown and in rare natural stones.' },
  { applies: (c) => has(c, /^centre:NV/) && !has(c, /^centre:SIV/), sentence: 'Nitrogen-vacancy lines without silicon are not read as natural: they occur in every kind of diamond.' },
  { applies: (c) => has(c, /^infrared:type-IIa$/), sentence: 'Type IIa alone does not decide: natural and laboratory-grown stones share it.' },
  { applies: (c) => has(c, /^ultraviolet:transparent$/), sentence: 'Transparency in the short-wave ultraviolet alone does not decide: it only tells type II from type I.' },
  { applies: (c) => has(c, /^glow[a-z-]*:.*inert$/), sentence: 'Absence of fluorescence alone does not decide: most diamonds of every origin do not glow.' },
  { applies: (c) => has(c, /^(centres:none|afterglow:none)$/), sentence: 'The absence of a line or of an after-glow does not decide: heat, irradiation, laser and noise can hide either.' },
];

/** The remarks that fit what was recorded; for a stone that stays open. */
export const neverAloneRemarks = (counted: readonly WeighedFinding[]): string[] => REMARKS.filter((remark) => remark.applies(counted)).map((remark) => remark.sentence);
