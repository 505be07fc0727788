import type { Side, WeighedFinding } from '../weighed-finding.ts';
import type { NatureCase } from './nature-case.ts';

/** A documented kind of stone that shows signs of the other nature. */
type LookAlike = {
  /** The nature that such a stone would wrongly be given. */
  readonly looks: Side;
  readonly stone: string;
  /** What of that nature it was seen to show. */
  readonly shows: readonly RegExp[];
  /** What would tell it from that nature. */
  readonly clears: string;
  readonly source: string;
};

const LOOK_ALIKES: readonly LookAlike[] = [
  {
    looks: 'natural', stone: 'laboratory-grown diamond after extreme annealing',
    shows: [/^centre:(N3|N2|CAPE\d+|H4|NI(694|700|709|711|787|794))$/, /^family:nickel-nitrogen$/, /^infrared:(type-IaA|3107)$/, /^ultraviolet:opaque$/, /^strain:mottled$/],
    clears: 'B aggregates, platelets, a natural growth pattern, natural strain or a mineral inclusion',
    source: 'Collins & Stanley, J. Phys. D 18 (1985) 2537; Day et al., Diamond Relat. Mater. 2024; Mintrone, Phan, Chalain, Int. Gemmological Conf. 2023',
  },
  {
    looks: 'natural', stone: 'CVD-grown diamond with a blue glow and bundles of dislocations, or heated',
    shows: [/^glow:long-over-short$/, /^pattern:dislocation-network$/, /^strain:mottled$/, /^centre:D490$/, /^seen:crystal-inclusion$/],
    clears: 'cross-hatched or banded strain, lines of plastic deformation, natural companion lines or aggregated nitrogen',
    source: 'Anomalous green luminescent properties in CVD synthetic diamonds, phys. status solidi; Gems & Gemology Lab Notes, Winter 2008; J. Gemmology 37(3) (2020) 86–88',
  },
  {
    looks: 'grown', stone: 'natural type IIa diamond with nickel lines, a strong blue after-glow or silicon-vacancy',
    shows: [/^centre:(NI883|SIV)$/, /^afterglow:blue$/, /^glow:short-over-long$/],
    clears: 'growth pattern, lines of CVD growth, metallic flux, cobalt lines, or a magnet',
    source: 'Gems & Gemology GNI, Winter 2017; Wang, Johnson, D’Haenens-Johansson, Loudin, GSA 2016, abstract 280126',
  },
  {
    looks: 'grown', stone: 'natural diamond without strain and with dark inclusions, taken for HPHT-grown',
    shows: [/^strain:none-seen$/, /^seen:metallic-flux$/, /^glow:short-over-long$/],
    clears: 'growth pattern, infrared or photoluminescence',
    source: 'McElhenny & Eaton-Magaña, Gems & Gemology Lab Notes, Winter 2018',
  },
];

const allShown = (findings: readonly WeighedFinding[], shows: readonly RegExp[]): boolean => findings.every((finding) => shows.some((code) => code.test(finding.code)));

/** Why a nature is not stated although its rule is met: everything that speaks for it is known from a stone of the other nature. Null where it is not. */
export function documentedTogether(one: NatureCase): string | null {
  if (!one.met) return null;
  const known = LOOK_ALIKES.find((entry) => entry.looks === one.side && allShown(one.all, entry.shows));
  return known === undefined ? null : `All that speaks for ${one.side === 'natural' ? 'natural growth' : 'growth in a laboratory'} has been documented together in ${known.stone} (${known.source}): ${known.clears} would tell them apart.`;
}
