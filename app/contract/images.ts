import { z } from 'zod';
import { decayParameters, pairParameters, polariserParameters } from '../images/analysis-parameters.ts';
import { decayResult } from '../images/decay-result.ts';
import { pairResult } from '../images/pair-result.ts';
import { photographFacts } from '../images/photograph-facts.ts';
import { polariserResult } from '../images/polariser-result.ts';
import { id, instant } from './common.ts';
import { changes, reads } from './operation.ts';

const outline = z.object({ x: z.number(), y: z.number(), radius: z.number() });

const EXAMINERS = ['examiner', 'second-examiner'] as const;

/** A kept analysis of photographs of an item. */
export const photoAnalysisView = z.object({
  id, itemId: id, at: instant, by: z.string(), version: z.string(),
  /** Runs that stones were given from it. */
  runs: z.array(z.object({ stoneId: id, run: z.string() })),
  content: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('pair'), parameters: pairParameters, result: pairResult }),
    z.object({ kind: z.literal('decay'), parameters: decayParameters, result: decayResult }),
    z.object({ kind: z.literal('polarisers'), parameters: polariserParameters, result: polariserResult }),
  ]),
});
export type PhotoAnalysisView = z.infer<typeof photoAnalysisView>;
export type PhotoAnalysisContent = PhotoAnalysisView['content'];
/** An analysis of one kind. */
export type AnalysisOf<K extends PhotoAnalysisContent['kind']> = PhotoAnalysisView & { readonly content: Extract<PhotoAnalysisContent, { kind: K }> };

/** Photographs as pictures to be read and measured. */
export const imagesContract = {
  /** What the file says of itself: size, depth, exposure. */
  'images.facts': reads('anyone', z.strictObject({ photographId: id }), photographFacts),
  /** A smaller, upright JPEG for looking at; also of kinds that a window can't draw. */
  'images.preview': reads('anyone', z.strictObject({ photographId: id, longSide: z.number().int().min(64).max(4096) }), z.object({ facts: photographFacts, jpeg: z.instanceof(Uint8Array) })),
  /** Where the stones seem to be, as fractions of the upright photograph: x and radius of its width, y of its height. */
  'images.suggestOutlines': reads('anyone', z.strictObject({ photographId: id }), z.array(outline)),
  /** Compares a piece under both lamps, stone by stone, and keeps what it found. Nothing is proposed for a stone by this alone. */
  'images.comparePair': changes(EXAMINERS, z.strictObject({
    itemId: id, longWaveId: id, shortWaveId: id,
    /** The map whose marks are measured; null: bright places are looked for, tied to no stone. */
    mapId: id.nullable(),
    /** By how many stops the short-wave photograph was exposed more; null: read from the files. */
    stops: z.number().min(-20, 'At most 20 stops either way.').max(20, 'At most 20 stops either way.').nullable(),
  }), photoAnalysisView),
  /** Measures the fading of every stone over photographs taken after the lamp went off. */
  'images.decay': changes(EXAMINERS, z.strictObject({
    itemId: id, mapId: id.nullable(),
    frames: z.array(z.strictObject({ photographId: id, seconds: z.number().min(0, 'Times count from when the lamp went off.').max(3600, 'At most an hour.') })).min(3, 'At least three photographs are needed for a lifetime.').max(60, 'At most 60 photographs.'),
  }), photoAnalysisView),
  /** Reads the strain pattern of every stone on a photograph between crossed polarisers. */
  'images.polarisers': changes(EXAMINERS, z.strictObject({ itemId: id, photographId: id, mapId: id.nullable() }), photoAnalysisView),
  /** What was measured on photographs of an item, newest first. */
  'images.ofItem': reads('anyone', z.strictObject({ itemId: id }), z.array(photoAnalysisView)),
  /** Gives each of these stones a run with the photographs as its raw records and the findings proposed from the analysis; a stone that has one already is left alone. */
  'images.propose': changes(EXAMINERS, z.strictObject({ analysisId: id, stoneIds: z.array(id).min(1, 'Choose at least one stone.').max(500), cautions: z.array(z.enum(['laser', 'ultraviolet', 'cryogen'])).max(5) }), photoAnalysisView),
};
