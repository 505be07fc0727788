import { z } from 'zod';
import { colourClass } from '../domain/colour-class.ts';
import { conclusionId } from '../domain/conclusion.ts';
import { methodId } from '../domain/method.ts';
import { caseState, stoneSummary } from './cases.ts';
import { day, done, id, instant, line, nothing } from './common.ts';
import { HISTORY_SORTS, listPage, sortedBy } from './list-page.ts';
import { changes, reads } from './operation.ts';

/** A span of calendar days in the laboratory's zone, both ends included; null leaves an end open. */
export const period = z.strictObject({ from: day.nullable().default(null), to: day.nullable().default(null) });
export type Period = z.output<typeof period>;

/** Which stones of the history are asked for; what is left out does not narrow. */
export const historyFilter = z.strictObject({
  /** Words in numbers, descriptions, findings, reasons, and in the client's name, the question and the remarks of the case. */
  text: line(120).default(''),
  clientId: id.nullable().default(null),
  /** The day on which the case was received. */
  ...period.shape,
  state: caseState.nullable().default(null),
  stage: stoneSummary.shape.stage.nullable().default(null),
  /** The conclusion that stands. */
  conclusion: conclusionId.nullable().default(null),
  /** Concluded it, answered as second person, or made one of its tests. */
  personId: id.nullable().default(null),
  instrumentId: id.nullable().default(null),
  method: methodId.nullable().default(null),
  colourClass: colourClass.nullable().default(null),
  setting: z.enum(['mounted', 'loose']).nullable().default(null),
  /** Some person once concluded that further testing is required. */
  sentFurther: z.boolean().nullable().default(null),
  /** A second person once disagreed. */
  disagreement: z.boolean().nullable().default(null),
});
export type HistoryFilter = z.output<typeof historyFilter>;

const choice = z.object({ id, name: z.string() });

export const historyRow = stoneSummary.pick({ id: true, label: true, mounted: true, weight: true, colourClass: true, conclusion: true, stage: true }).extend({
  caseId: id, caseNumber: z.string(), clientName: z.string(), receivedAt: instant, state: caseState,
  concludedBy: z.string(), confirmedBy: z.string(), sentFurther: z.boolean(), disagreed: z.boolean(),
});
export type HistoryRow = z.infer<typeof historyRow>;

/** What the manager looks back on. */
export const historyContract = {
  /** Stones that fit, those of the newest cases first unless sorted otherwise. */
  'history.stones': reads('anyone', historyFilter.extend({ sort: sortedBy(HISTORY_SORTS), ...listPage }), z.object({ total: z.number(), rows: z.array(historyRow) })),
  /** What the filters offer: clients who have a case, people, instruments. */
  'history.choices': reads('anyone', nothing, z.object({
    clients: z.array(choice), people: z.array(choice), instruments: z.array(choice),
    /** The day of the first case, or null while there is none. */
    first: day.nullable(), today: day,
    /** The day of whatever can be counted first: a case, a check of an instrument, a trial of a known sample. */
    firstCounted: day.nullable(),
  })),
  /** Makes the search index anew from the records. */
  'history.rebuildSearch': changes(['manager'], nothing, done),
};
