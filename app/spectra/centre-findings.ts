import type { FindingFact, Strength } from '../domain/finding.ts';
import type { OpticalCentre } from '../reference/optical-centre.ts';
import { ARTEFACT_LINES } from '../reference/reference-lines.ts';
import { opticalCentre } from '../reference/optical-centres.ts';
import { RAMAN_OF_OTHERS } from './doubt-raman-of-others.ts';
import type { FindingInput } from './finding-input.ts';
import type { Match } from './match-centres.ts';
import { RAMAN_LINE } from './match-centres.ts';
import { withUncertainty } from './number-words.ts';

const LOWER: Readonly<Record<Strength, Strength>> = { diagnostic: 'strong', strong: 'supporting', supporting: 'neutral', neutral: 'neutral' };
const DOUBLET_WORDS: Readonly<Record<string, string>> = { SIV: 'both lines of the SiV⁻ doublet', NI883: 'both lines of the nickel pair' };

type Family = { readonly code: string; readonly members: readonly string[]; readonly least: number; readonly beside?: string; readonly words: string; readonly supports: FindingFact['supports']; readonly caution: string; readonly source: string };
/** Lines that weigh more together than each alone. */
const FAMILIES: readonly Family[] = [
  {
    code: 'family:natural-companions', members: ['NAT550', 'NAT554', 'NAT558', 'NAT590', 'NAT715'], least: 2, beside: 'SIV', words: 'natural companions of SiV⁻', supports: 'natural',
    caution: 'absent in type IaB stones with SiV⁻', source: 'Silicon in natural type IIa and type IaB diamond, Gems & Gemology Lab Notes, Winter 2013',
  },
  {
    code: 'family:nickel-nitrogen', members: ['NI787', 'NI794', 'NI711', 'NI700'], least: 2, words: 'nickel–nitrogen lines', supports: 'natural',
    caution: 'some heated HPHT-grown stones show the family', source: 'Mintrone, Phan, Chalain, Int. Gemmological Conf. 2023',
  },
  {
    code: 'family:cobalt', members: ['CO580', 'CO544', 'CO562', 'CO524', 'CO623', 'CO479'], least: 2, words: 'cobalt lines', supports: 'grown-hpht',
    caution: 'a radiation line lies at 580 nm', source: 'Lawson et al., J. Appl. Phys. 79 (1996)',
  },
  {
    code: 'family:nickel-grown', members: ['NI484', 'NI494', 'NI883'], least: 2, words: 'nickel lines of HPHT growth', supports: 'grown-hpht',
    caution: 'nickel-rich natural stones exist', source: 'arXiv 2310.08591; Nazaré, Lopes, Kanda, MRS Proc. (1994)',
  },
  {
    code: 'family:cvd-533-563', members: ['CVD533', 'CVD563'], least: 2, words: 'lines at 533 and 562.5 nm of CVD growth', supports: 'grown-cvd',
    caution: 'radiation and cobalt lines lie beside them', source: 'Zaitsev 2001; Wang et al., Gems & Gemology 2003–2012 (from memory)',
  },
];

const positionError = (match: Match, calibration: number): number => Math.hypot(match.line.standardError ?? 0.25 * match.line.fwhm, calibration);

/** Strength that is left after resolution and signal are taken into account. */
function strengthOf(centre: OpticalCentre, matches: readonly Match[]): Strength {
  let strength = centre.strength;
  if (matches.every((match) => !match.resolved)) strength = LOWER[strength];
  if (matches.some((match) => match.ambiguousWith.some((id) => opticalCentre(id)?.supports !== centre.supports))) strength = LOWER[strength];
  return strength;
}

function centreFact(centre: OpticalCentre, matches: readonly Match[], input: FindingInput): FindingFact {
  const { method, calibrationErrorNm } = input.parameters;
  const word = method === 'absorption' ? 'Absorption line' : 'Emission line';
  const strongest = matches.reduce((a, b) => (b.line.height > a.line.height ? b : a));
  const places = matches.map((match) => withUncertainty(match.line.position, positionError(match, calibrationErrorNm)));
  // The matcher keeps two lines of one centre only where they are its doublet.
  const doublet = matches.length === 2 && DOUBLET_WORDS[centre.id] !== undefined;
  const what = doublet ? `${DOUBLET_WORDS[centre.id]}` : centre.name;
  const unresolved = matches.every((match) => !match.resolved) ? ', not resolved at this resolution' : '';
  const rivals = [...new Set(strongest.ambiguousWith)].map((id) => opticalCentre(id)?.name ?? id);
  const but = rivals.length > 0 ? `; ${rivals.join(' or ')} can’t be told apart from it here` : '';
  const strength = strengthOf(centre, matches);
  return {
    code: `centre:${centre.id}`,
    statement: `${word}${matches.length > 1 ? 's' : ''} at ${places.join(' and ')} nm, signal over noise ${strongest.line.snr.toFixed(0)}: ${what}${unresolved}${but}.`,
    strength, supports: strength === 'neutral' ? 'none' : centre.supports, method, caution: centre.caution, source: centre.source,
  };
}

function ambiguousFact(match: Match, input: FindingInput): FindingFact {
  const { method, calibrationErrorNm } = input.parameters;
  const names = match.ambiguousWith.map((id) => opticalCentre(id)?.name ?? ARTEFACT_LINES.find((line) => line.id === id)?.what ?? (id === RAMAN_OF_OTHERS ? 'a Raman line of another material' : id === RAMAN_LINE ? 'the Raman line of diamond' : id));
  return {
    code: `ambiguous:${match.ambiguousWith.join('+')}`.slice(0, 80),
    statement: `Line at ${withUncertainty(match.line.position, positionError(match, calibrationErrorNm))} nm: ${names.join(' or ')}; they can’t be told apart in this spectrum.`,
    strength: 'neutral', supports: 'none', method, caution: 'a finer instrument, a cooled stone or another laser may decide',
  };
}

/** A clear line without a name: then it can't be said that nothing stands out. */
const isStrongUnnamed = (match: Match): boolean => match.centre === null && match.sidebandOf === null && match.artefact === null && match.line.snr >= 10;

/** One fact per centre seen, per ambiguous line, and per family of lines that weighs more together. */
export function centreFindings(input: FindingInput): FindingFact[] {
  const { method } = input.parameters;
  const byCentre = new Map<string, Match[]>();
  const ambiguous: Match[] = [];
  for (const match of input.named) {
    if (match.centre) byCentre.set(match.centre.id, [...(byCentre.get(match.centre.id) ?? []), match]);
    else if (match.ambiguousWith.length > 0 && match.sidebandOf === null) ambiguous.push(match);
  }
  const facts = [...byCentre.values()].map((matches) => centreFact(matches[0]!.centre!, matches, input));
  for (const family of FAMILIES) {
    const there = family.members.filter((id) => byCentre.has(id));
    if (there.length < family.least || (family.beside !== undefined && !byCentre.has(family.beside))) continue;
    const places = there.map((id) => byCentre.get(id)![0]!.line.position.toFixed(1)).join(', ');
    facts.push({ code: family.code, statement: `Several ${family.words} together (${places} nm).`, strength: 'strong', supports: family.supports, method, caution: family.caution, source: family.source });
  }
  if ((method === 'photoluminescence' || method === 'absorption') && facts.length === 0 && ambiguous.length === 0 && !input.named.some(isStrongUnnamed)) {
    facts.push({ code: 'centres:none', statement: `No optical centre of the table stands out of the noise in this ${method} spectrum.`, strength: 'neutral', supports: 'none', method, caution: 'absence says little: it depends on laser, temperature and noise' });
  }
  return [...facts, ...ambiguous.map((match) => ambiguousFact(match, input))];
}

/** Broad bands of an absorption curve. */
export function absorptionBandFindings(input: FindingInput): FindingFact[] {
  return input.bands.map(({ band, maximumNm, height }) => ({
    code: `band:${band.id}`, statement: `Broad absorption band with its maximum near ${maximumNm.toFixed(0)} nm, height ${height.toFixed(2)}: ${band.name}.`,
    strength: band.strength, supports: band.supports, method: 'absorption', caution: band.caution, source: band.source,
  }));
}
