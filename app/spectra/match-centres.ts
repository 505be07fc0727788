import type { CentreMode, ExpectedLine, OpticalCentre } from '../reference/optical-centre.ts';
import { COLD_K, expectedLine, warmth } from '../reference/optical-centre.ts';
import { OPTICAL_CENTRES } from '../reference/optical-centres.ts';
import { ARTEFACT_LINES } from '../reference/reference-lines.ts';
import type { DetectedLine } from './detect-lines.ts';

/** All lengths in nm, in air. */
export type MatchContext = {
  readonly mode: CentreMode;
  readonly temperatureK: number;
  readonly resolutionNm: number | null;
  readonly calibrationErrorNm: number;
  /** Distance of the points. */
  readonly stepNm: number;
  /** Where the diamond line should be, nm, if no line was taken for it: a coarse instrument may show it under a centre. */
  readonly missingRamanNm?: number;
};

export type Match = {
  readonly line: DetectedLine;
  /** Null where nothing fits, or several do and none can be preferred. */
  readonly centre: OpticalCentre | null;
  /** Where the centre was expected, nm. */
  readonly expectedNm: number | null;
  /** Ids of all that the line may be; of a sideband, of all that its zero-phonon line may be. */
  readonly ambiguousWith: readonly string[];
  /** Centre whose sideband the line is; the likeliest one where the zero-phonon line itself is ambiguous. */
  readonly sidebandOf: string | null;
  /** Id of an artefact line that fits, named or not. */
  readonly artefact: string | null;
  /** False where the instrument is too coarse for this line to stand alone. */
  readonly resolved: boolean;
  /** The line fits the centre only as a cooled stone would show it, though the run is said to be warm. */
  readonly asCold: boolean;
  /** The centre at whose place the line lies, where only its width speaks against the name. */
  readonly tooWideFor?: OpticalCentre;
};

/** Signal over noise asked before a line gets a name. */
export const LEAST_SNR_TO_NAME = 5;
/** Signal over noise at which an unexpected width is worth a word. */
const LEAST_SNR_WIDTH = 10;
/** Signal over noise at which the other line of a pair would show too. */
const LEAST_SNR_FOR_PARTNER = 12;
/** Share of the resolution by which a maximum may be off (judgement). */
const RESOLUTION_SHARE = 0.6;
/** Id of the diamond line among the candidates. */
export const RAMAN_LINE = 'RAMAN';
/** A rival counts until its squared distance exceeds the best one's by this: about 1 : 90 in likelihood. */
const DECISIVE = 9;
/** Lines may be this much narrower or wider than expected (judgement). */
const NARROWEST = 0.3;
/** A line can't be narrower than the instrument; a share is left for the fit and for a resolution stated too large. */
const NARROWEST_INSTRUMENT = 0.8;
const LEAST_PIXELS = 2.2;
/** Above this temperature, kelvin, lines as narrow as a cooled stone's are remarkable. */
const WARM_K = 200;
const WIDEST = { known: 3, unknown: 2 } as const;
/** Width assumed for lines whose own width is not published, nm, cold and warm (judgement). */
const USUAL_WIDTH_NM = { cold: 0.6, room: 2 } as const;
/** Neighbours closer than so many resolutions can hide one another: one maximum may then be both (judgement). */
const HIDING = 1.5;
/** A sideband may outshine its own line only where it is broad, nm; a narrower line that does is a line of its own (judgement). */
const BROAD_SIDEBAND_NM = 10;
/** Sidebands are broad: at least this wide, nm (judgement). */
const LEAST_SIDEBAND_NM = 2.5;

/** The 596/597 pair: splitting 0.7 nm, told apart only where the instrument reaches half of that. */
const PAIR = { members: ['CVD596', 'CVD597'], id: 'CVD596-597', from: 596.0, to: 597.8, at: 596.85, neededNm: 0.35, mergedFwhmNm: 0.65, leastSnr: 10 } as const;
/** One maximum for both lines: what is left of their meaning where the pair is not resolved. */
export const UNRESOLVED_PAIR: OpticalCentre | undefined = ((): OpticalCentre | undefined => {
  const member = OPTICAL_CENTRES.find((centre) => centre.id === PAIR.members[0]);
  return member && {
    ...member, id: PAIR.id, name: '596/597 pair, not resolved', coldNm: PAIR.at, roomNm: PAIR.at, roomWindowNm: [PAIR.from, PAIR.to], coldHalfWindowNm: 0.9,
    neededFwhmNm: null, strength: 'supporting', caution: 'one maximum where the CVD pair would lie; a finer instrument must show both lines',
  };
})();

type Candidate = { readonly centre: OpticalCentre; readonly expected: ExpectedLine; readonly distance: number };

const TABLE: readonly OpticalCentre[] = UNRESOLVED_PAIR ? [...OPTICAL_CENTRES, UNRESOLVED_PAIR] : OPTICAL_CENTRES;

function widthFits(line: DetectedLine, expected: ExpectedLine, context: MatchContext): boolean {
  const instrument = context.resolutionNm ?? 0;
  const t = warmth(context.temperatureK);
  const own = expected.fwhmNm ?? USUAL_WIDTH_NM.cold + (USUAL_WIDTH_NM.room - USUAL_WIDTH_NM.cold) * t;
  const usual = Math.hypot(own, instrument);
  // On an instrument finer than its own pixels a cosmic ray of two pixels looks like a line: only wider ones can be trusted.
  const pixels = instrument > 0 && instrument < 2 * context.stepNm ? LEAST_PIXELS * context.stepNm : 0;
  const least = Math.max(pixels, NARROWEST_INSTRUMENT * instrument, expected.fwhmNm === null ? 0 : NARROWEST * usual);
  return line.fwhm >= least && line.fwhm <= (expected.fwhmNm === null ? WIDEST.unknown : WIDEST.known) * usual;
}

/** Whether the data can carry the pair's two lines apart, and so which of its entries may be used. */
function pairEntryAllowed(centre: OpticalCentre, lines: readonly DetectedLine[], line: DetectedLine, context: MatchContext): boolean {
  const isMember = (PAIR.members as readonly string[]).includes(centre.id);
  if (!isMember && centre.id !== PAIR.id) return true;
  const inside = lines.filter((other) => other.shoulder !== true && other.position >= PAIR.from - 0.3 && other.position <= PAIR.to + 0.1 && other.snr >= LEAST_SNR_TO_NAME).length;
  const fine = context.resolutionNm !== null && context.resolutionNm <= PAIR.neededNm;
  const apart = inside >= 2 || (fine && line.fwhm < PAIR.mergedFwhmNm);
  return isMember ? line.shoulder !== true && apart && (fine || inside >= 2) : !apart && line.snr >= PAIR.leastSnr;
}

/** Candidates as a cooled stone would show them: only lines too narrow for a warm one, at the cold position. */
function coldCandidates(line: DetectedLine, lines: readonly DetectedLine[], context: MatchContext): Candidate[] {
  if (context.temperatureK <= WARM_K) return [];
  return candidates(line, lines, { ...context, temperatureK: COLD_K }).filter(({ centre, expected }) => {
    const warm = expectedLine(centre, context.temperatureK).fwhmNm;
    return centre.roomFwhmNm !== null && warm !== null && line.fwhm < NARROWEST * Math.hypot(warm, context.resolutionNm ?? 0) && line.position >= expected.lo && line.position <= expected.hi;
  });
}

function candidates(line: DetectedLine, lines: readonly DetectedLine[], context: MatchContext): Candidate[] {
  const instrument = context.resolutionNm ?? 0;
  const slack = 2 * Math.hypot(line.standardError ?? 0.5 * line.fwhm / Math.max(5, line.snr), context.calibrationErrorNm);
  const found: Candidate[] = [];
  for (const centre of TABLE) {
    if (!centre.modes.includes(context.mode)) continue;
    const expected = expectedLine(centre, context.temperatureK);
    const reach = RESOLUTION_SHARE * instrument;
    if (line.position < Math.min(expected.lo, expected.nm - reach) - slack || line.position > Math.max(expected.hi, expected.nm + reach) + slack) continue;
    if (!widthFits(line, expected, context) || !pairEntryAllowed(centre, lines, line, context)) continue;
    const spread = Math.hypot(slack / 2, (expected.hi - expected.lo) / 4, 0.3 * instrument);
    found.push({ centre, expected, distance: ((line.position - expected.nm) / spread) ** 2 });
  }
  return found.sort((a, b) => a.distance - b.distance);
}

/** Major neighbours closer to each other than the instrument's resolution can hide one another. */
function hiddenNeighbours(best: Candidate, line: DetectedLine, context: MatchContext): string[] {
  const instrument = context.resolutionNm;
  if (instrument === null || best.centre.yieldsTo !== undefined) return [];
  const ids: string[] = [];
  for (const centre of TABLE) {
    if (centre.id === best.centre.id || centre.yieldsTo !== undefined || centre.companionOf !== undefined || !centre.modes.includes(context.mode)) continue;
    if (centre.neededFwhmNm === null || (PAIR.members as readonly string[]).includes(centre.id)) continue;
    const nm = expectedLine(centre, context.temperatureK).nm;
    if (Math.abs(nm - best.expected.nm) < HIDING * instrument && Math.abs(nm - line.position) < HIDING * instrument) ids.push(centre.id);
  }
  return ids;
}

const sameFamily = (a: OpticalCentre, b: OpticalCentre): boolean => a.supports === b.supports && a.strength === b.strength && a.model === b.model;

function nameLine(line: DetectedLine, lines: readonly DetectedLine[], context: MatchContext): Match {
  const nothing = { line, centre: null, expectedNm: null, ambiguousWith: [], sidebandOf: null, artefact: null, resolved: true, asCold: false };
  const instrument = context.resolutionNm ?? 0;
  const slack = Math.max(2 * context.calibrationErrorNm, RESOLUTION_SHARE * instrument);
  // Lamp lines are as narrow as the instrument: a broad line of the stone at the same place is not one.
  const artefact = ARTEFACT_LINES.filter((a) => Math.abs(line.position - a.nm) <= Math.max(a.halfWindowNm, slack) && line.fwhm <= Math.max(1.5 * instrument, 2 * a.halfWindowNm))
    .sort((a, b) => Math.abs(line.position - a.nm) - Math.abs(line.position - b.nm))[0];
  if (line.snr < LEAST_SNR_TO_NAME) return { ...nothing, artefact: artefact?.id ?? null };
  const warm = candidates(line, lines, context);
  const all = warm.length > 0 ? warm : coldCandidates(line, lines, context);
  let best = all[0];
  if (best === undefined) return { ...nothing, artefact: artefact?.id ?? null };
  if (artefact) {
    const gap = Math.abs(line.position - best.expected.nm) - Math.abs(line.position - artefact.nm);
    if (gap > 0.3 * Math.max(instrument, artefact.halfWindowNm)) return { ...nothing, artefact: artefact.id };
    if (gap > -0.5 * Math.max(instrument, artefact.halfWindowNm)) return { ...nothing, ambiguousWith: [best.centre.id, artefact.id], artefact: artefact.id };
  }
  const rivals = all.filter((c) => c.distance - all[0]!.distance < DECISIVE);
  const commoner = best.centre.yieldsTo === undefined ? undefined : rivals.find((c) => c.centre.id === best!.centre.yieldsTo);
  // The rarer line keeps its place only on a cold stone and an instrument fine enough for it.
  const fineEnough = best.centre.neededFwhmNm === null || (context.resolutionNm !== null && context.resolutionNm <= best.centre.neededFwhmNm);
  if (commoner && !(fineEnough && context.temperatureK < 150)) best = commoner;
  const chosen = best;
  const raman = context.missingRamanNm !== undefined && Math.abs(line.position - context.missingRamanNm) < RESOLUTION_SHARE * instrument + 2 * context.calibrationErrorNm;
  if (raman) return { ...nothing, ambiguousWith: [chosen.centre.id, RAMAN_LINE] };
  const others = [...new Set([...rivals.filter((c) => c !== chosen).map((c) => c.centre.id), ...hiddenNeighbours(chosen, line, context)])];
  const serious = others.filter((id) => {
    const other = TABLE.find((centre) => centre.id === id);
    return other !== undefined && other.yieldsTo !== chosen.centre.id && other.companionOf === undefined && !sameFamily(other, chosen.centre);
  });
  if (serious.length > 0) return { ...nothing, ambiguousWith: [chosen.centre.id, ...others], artefact: null };
  const resolved = chosen.centre.neededFwhmNm === null || context.resolutionNm === null || context.resolutionNm <= chosen.centre.neededFwhmNm * 1.05;
  return { line, centre: chosen.centre, expectedNm: chosen.expected.nm, ambiguousWith: others, sidebandOf: null, artefact: null, resolved, asCold: warm.length === 0 };
}

/** Two lines that the same centre's doublet explains: as far apart as published, on an instrument that can part them. */
function isDoublet(a: Match, b: Match, context: MatchContext): boolean {
  const pair = a.centre?.doubletNm;
  if (!pair) return false;
  const splitting = pair[1] - pair[0];
  const fine = context.resolutionNm !== null && context.resolutionNm <= 0.5 * splitting * 1.1;
  return fine && Math.abs(Math.abs(a.line.position - b.line.position) - splitting) < 0.3 * splitting;
}

/** A pair far wider apart than its lines are broad shows both, or it is not that pair. */
function lacksPartner(match: Match, all: readonly Match[], context: MatchContext): boolean {
  const pair = match.centre?.doubletNm;
  if (!pair || match.centre === null || context.resolutionNm === null || match.line.snr < LEAST_SNR_FOR_PARTNER) return false;
  const splitting = pair[1] - pair[0];
  const width = Math.hypot(expectedLine(match.centre, context.temperatureK).fwhmNm ?? 0, context.resolutionNm);
  return splitting > 2 * width && match.line.fwhm < 0.5 * splitting && !all.some((other) => other !== match && other.centre?.id === match.centre!.id);
}

/** A centre is named once, or twice as its doublet; further lines in its window stay unnamed. */
function onceEach(matches: readonly Match[], context: MatchContext): Match[] {
  return matches.map((match) => {
    if (match.centre === null) return match;
    if (lacksPartner(match, matches, context)) return { ...match, centre: null, expectedNm: null, ambiguousWith: [] };
    const stronger = matches.filter((other) => other !== match && other.centre?.id === match.centre!.id && other.line.height > match.line.height);
    return stronger.length === 0 || (stronger.length === 1 && isDoublet(match, stronger[0]!, context)) ? match : { ...match, centre: null, expectedNm: null, ambiguousWith: [] };
  });
}

/** Broad lines with no width of their own published, far weaker than the line whose sideband they lie in, are that sideband. */
function looksLikeSideband(match: Match, all: readonly Match[], mode: CentreMode): boolean {
  if (match.centre === null || match.centre.roomFwhmNm !== null || match.line.fwhm < LEAST_SIDEBAND_NM) return false;
  return all.some((other) => {
    const range = mode === 'emission' ? other.centre?.emissionSideband : other.centre?.absorptionSideband;
    return range !== undefined && match.line.position >= range[0] && match.line.position <= range[1] && other.line.height > 2 * match.line.height;
  });
}

/** The centre of `other` in whose sideband region this wavelength lies: its own, or the likeliest of those that it may be. */
function sidebandOwner(other: Match, nm: number, mode: CentreMode): OpticalCentre | undefined {
  const may = other.centre ? [other.centre] : other.ambiguousWith.flatMap((id) => OPTICAL_CENTRES.find((centre) => centre.id === id) ?? []);
  return may.find((centre) => {
    const range = mode === 'emission' ? centre.emissionSideband : centre.absorptionSideband;
    return range !== undefined && nm >= range[0] && nm <= range[1];
  });
}

/** Broad unnamed lines beside a zero-phonon line belong to it, also where it can't be told which of several centres that line is. */
function withSideband(match: Match, all: readonly Match[], mode: CentreMode): Match {
  if (match.centre !== null || match.ambiguousWith.length > 0 || match.line.fwhm < LEAST_SIDEBAND_NM) return match;
  let owner: { readonly match: Match; readonly centre: OpticalCentre } | null = null;
  for (const other of all) {
    const centre = sidebandOwner(other, match.line.position, mode);
    if (!centre || (match.line.fwhm < BROAD_SIDEBAND_NM && match.line.height > other.line.height)) continue;
    if (owner === null || other.line.height > owner.match.line.height) owner = { match: other, centre };
  }
  if (owner === null) return match;
  return { ...match, sidebandOf: owner.centre.id, ambiguousWith: owner.match.centre ? [] : owner.match.ambiguousWith, artefact: null };
}

/** Absorption lines that pass for a centre beside another: 575 nm beside 536 (Collins & Ly, J. Phys.: Condens. Matter 14 (2002) L467), and N3's own sidebands for ND1. */
function withLookAlikes(match: Match, all: readonly Match[], mode: CentreMode): Match {
  if (mode !== 'absorption' || match.centre === null) return match;
  const other = (id: string): Match | undefined => all.find((m) => m.centre?.id === id);
  if (match.centre.id === 'NV0' && other('N536')) return { ...match, centre: null, expectedNm: null, ambiguousWith: ['NV0', 'N536'] };
  const n3 = other('N3');
  if (match.centre.id === 'ND1' && n3 !== undefined && n3.line.height > match.line.height) return { ...match, centre: null, expectedNm: null, ambiguousWith: [], sidebandOf: 'N3' };
  return match;
}

/** Tells of a clear unnamed line at a centre's place that is too wide for it; rarer lines and companions are not guessed at. */
function withWidth(match: Match, context: MatchContext): Match {
  if (match.centre !== null || match.sidebandOf !== null || match.artefact !== null || match.ambiguousWith.length > 0 || match.line.snr < LEAST_SNR_WIDTH) return match;
  const at = OPTICAL_CENTRES.find((centre) => {
    if (!centre.modes.includes(context.mode) || centre.roomFwhmNm === null || centre.yieldsTo !== undefined || centre.companionOf !== undefined) return false;
    const expected = expectedLine(centre, context.temperatureK);
    const slack = 2 * context.calibrationErrorNm;
    const most = WIDEST.known * Math.hypot(expected.fwhmNm ?? centre.roomFwhmNm, context.resolutionNm ?? 0);
    return match.line.position >= expected.lo - slack && match.line.position <= expected.hi + slack && match.line.fwhm > most && match.line.fwhm < 2 * Math.hypot(centre.roomFwhmNm, context.resolutionNm ?? 0);
  });
  return at === undefined ? match : { ...match, tooWideFor: at };
}

/**
 * Names lines by the table of optical centres. Lines ascending; each comes back once, in order.
 * Distance is weighed against fit error, calibration, the centre's own scatter and the resolution; what can't be told apart stays unnamed with its candidates.
 */
export function matchCentres(lines: readonly DetectedLine[], context: MatchContext): Match[] {
  const first = onceEach(lines.map((line) => nameLine(line, lines, context)), context);
  const named = first.map((match) => (looksLikeSideband(match, first, context.mode) ? { ...match, centre: null, expectedNm: null, ambiguousWith: [] } : match));
  const present = new Set(named.flatMap((match) => (match.centre ? [match.centre.id] : [])));
  const kept = named.map((match) => (match.centre?.companionOf !== undefined && !present.has(match.centre.companionOf)
    ? { ...match, centre: null, expectedNm: null } : match)).map((match, _, all) => withLookAlikes(match, all, context.mode));
  return kept.map((match) => withWidth(withSideband(match, kept, context.mode), context));
}
