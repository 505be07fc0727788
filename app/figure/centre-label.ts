import type { Supports } from '../domain/finding.ts';
import { opticalCentre } from '../reference/optical-centres.ts';
import type { Ink } from './figure-model.ts';

/** What stands at a named line in a figure. */
export type CentreLabel = { readonly name: string; readonly ink: Ink };
export type CentreLabelOf = (id: string) => CentreLabel | undefined;

/** Names that are short enough for a figure; lines of one name that lie together share a label. */
const SHORT_NAMES: Readonly<Record<string, string>> = { CVD596: 'CVD pair', CVD597: 'CVD pair', S1A: 'S1', S1B: 'S1', N2: 'N2', 'GR1-744': 'GR1' };

/** The ink of what a line speaks for; laboratory growth without a method takes the ink of CVD, the commoner one. */
export function inkOf(supports: Supports): Ink {
  switch (supports) {
    case 'diamond': return 'accent';
    case 'natural': return 'natural';
    case 'grown': case 'grown-cvd': return 'cvd';
    case 'grown-hpht': return 'hpht';
    case 'not-diamond': return 'warn';
    case 'treatment': case 'none': return 'ink';
  }
}

/** A table name that only repeats the position becomes a word for the kind of line. */
function shortName(id: string, name: string, supports: Supports): string {
  const known = SHORT_NAMES[id];
  if (known !== undefined) return known;
  const inBrackets = /^[\d.]+(?:\/[\d.]+)? \((.+)\)$/.exec(name)?.[1];
  if (inBrackets !== undefined) return inBrackets.replace('natural ', '');
  if (!/^[\d.]+$/.test(name)) return name;
  return supports === 'grown-cvd' ? 'CVD' : '';
}

/** Name and ink of a centre of the table, as a figure writes them. */
export const centreLabel: CentreLabelOf = (id) => {
  const centre = opticalCentre(id);
  return centre === undefined ? undefined : { name: shortName(id, centre.name, centre.supports), ink: inkOf(centre.supports) };
};
