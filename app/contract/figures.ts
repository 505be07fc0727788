import { z } from 'zod';
import { isDay } from '../custody/calendar.ts';
import { conclusionId } from '../domain/conclusion.ts';
import { GRAINS, stepsAtMost } from '../history/steps.ts';
import { TRUTHS } from '../statistics/screening-figures.ts';
import { day, filled, id, instant, line } from './common.ts';
import { changes, reads } from './operation.ts';

/** A figure for every day of ten years is no figure any more. */
const MOST_STEPS = 520;

/** A span of calendar days in the laboratory's zone, both ends included. */
const calendarDay = day.refine(isDay, { error: 'There is no such day in the calendar.' });
export const figuresPeriod = z.strictObject({ from: calendarDay, to: calendarDay });
export type FiguresPeriod = z.output<typeof figuresPeriod>;

const inOrder = { error: 'The period ends before it begins.', path: ['to'] };
const periodInOrder = figuresPeriod.refine(({ from, to }) => from <= to, inOrder);

const limits = z.object({ low: z.number(), high: z.number() });
/** A count of a larger count with exact two-sided 95 % limits. */
export const share = z.object({ count: z.number(), of: z.number(), limits });
const rate = share.extend({ /** One-sided upper 95 % limit. */ atMost: z.number() });

const spread = z.object({ n: z.number(), least: z.number(), lower: z.number(), median: z.number(), upper: z.number(), greatest: z.number() });

/** The figures of one span of time; `turnaround` in days of 24 hours. */
export const timeFigures = z.object({
  received: z.number(), settled: z.number(), reported: z.number(), amended: z.number(), withdrawn: z.number(), open: z.number(),
  turnaround: spread.nullable(), outcomes: z.record(conclusionId, z.number()), sentFurther: share,
});

export const figuresOutcome = z.object({
  steps: z.array(timeFigures.extend({ label: z.string(), from: day, to: day, isPart: z.boolean() })), whole: timeFigures,
  /** Stones that were known samples: left out of the conclusions above. */
  knownSamples: z.number(),
});
export type FiguresOutcome = z.infer<typeof figuresOutcome>;

const agreementTable = z.object({
  /** What the first person concluded (rows) and the second (columns), both in the order of `outcomes`. */
  outcomes: z.array(conclusionId), counts: z.array(z.array(z.number())),
  n: z.number(), observed: share, byChance: z.number().nullable(), kappa: z.number().nullable(), standardError: z.number().nullable(), limits: limits.nullable(),
});

export const agreementOutcome = z.object({
  /** Answers whose own conclusion was stated before the first one was shown: only these are two readings. */
  readFirst: agreementTable,
  /** The others: the second person had seen what the first concluded. */
  seen: agreementTable,
  /** Disagreements without a conclusion of one's own: in neither table. */
  unstated: z.number(),
});
export type AgreementOutcome = z.infer<typeof agreementOutcome>;

export const truth = z.enum(TRUTHS);

export const knownSampleView = z.object({
  id, label: z.string(), truth, basis: z.string(), createdAt: instant, createdBy: z.string(), trials: z.number(),
  /** `originWrong`: it is not what it was said to be, and its trials do not count. */
  withdrawn: z.object({ at: instant, by: z.string(), reason: z.string(), originWrong: z.boolean() }).nullable(),
});
export type KnownSampleView = z.infer<typeof knownSampleView>;

export const trialView = z.object({
  id, sampleId: id, sample: z.string(), truth, outcome: conclusionId, examiner: z.string(), examinedAt: instant, blind: z.boolean(), remark: z.string(),
  stone: z.object({ id, label: z.string(), caseNumber: z.string() }).nullable(), at: instant, by: z.string(),
  /** Names of the instruments that were used; empty where nobody said. */
  instruments: z.array(z.string()),
  /** Set where it was taken back. */
  withdrawn: z.object({ at: instant, by: z.string(), reason: z.string() }).nullable(),
  /** False where it was taken back, or the origin of its sample was found to be wrong: it is in no rate then. */
  counts: z.boolean(),
});
export type TrialView = z.infer<typeof trialView>;

const endings = z.object({ passed: z.number(), flagged: z.number(), referred: z.number(), all: z.number() });
export const screeningOutcome = z.object({
  natural: endings, other: endings, byTruth: z.record(truth, endings),
  falseNatural: rate, falseAlarm: rate, detected: rate, referred: rate, referredNatural: rate, referredOther: rate,
});

export const trialsOutcome = z.object({
  samples: z.array(knownSampleView), trials: z.array(trialView),
  /** Of the trials of the period in which the examiner did not know, and of all. */
  blind: screeningOutcome, all: screeningOutcome,
  people: z.array(z.object({ id, name: z.string() })), instruments: z.array(z.object({ id, name: z.string() })),
  /** What the house assumes today: the share of what comes in that is not natural, per cent. */
  assumedNotNatural: z.number(),
});
export type TrialsOutcome = z.infer<typeof trialsOutcome>;

export const checkSeries = z.object({
  instrumentId: id, instrument: z.string(), quantity: z.string(), unit: z.string(),
  points: z.array(z.object({
    at: instant, by: z.string(), value: z.number(), passed: z.boolean(), signals: z.array(z.string()),
    /** What it should have been at this check, and how far from that it still passed; null where nobody said. */
    expected: z.number().nullable(), tolerance: z.number().nullable(),
    /** Which of `bases` it belongs to. */
    base: z.number(),
  })),
  /** The whole course up to the end of the period, whatever its beginning: stretches with limits of their own, a new one after each service. */
  bases: z.array(z.object({
    /** When it begins: its first check of this quantity. */
    at: instant,
    /** The check after a service that began it; null for the first. */
    service: z.object({ at: instant, words: z.string() }).nullable(),
    /** From its first checks; null where there are too few, or all are the same. */
    limits: z.object({ mean: z.number(), sigma: z.number(), low: z.number(), high: z.number(), from: z.number() }).nullable(),
    /** Checks in it up to the end of the period. */
    checks: z.number(),
  })),
});
export type CheckSeries = z.infer<typeof checkSeries>;

const MANAGERS = ['manager'] as const;
const instrumentIds = z.array(id).max(20).default([]);

/** What the manager answers for, in numbers. */
export const figuresContract = {
  'figures.overTime': reads(MANAGERS, figuresPeriod.extend({ grain: z.enum(GRAINS).default('month') }).refine(({ from, to }) => from <= to, inOrder)
    .refine(({ from, to, grain }) => stepsAtMost(from, to, grain) <= MOST_STEPS, { error: 'That are too many steps: take longer ones or a shorter period.', path: ['grain'] }), figuresOutcome),
  'figures.agreement': reads(MANAGERS, periodInOrder, agreementOutcome),
  'figures.checks': reads(MANAGERS, periodInOrder, z.object({ series: z.array(checkSeries), /** Checks of the period that gave no number. */ withoutNumber: z.number() })),
  'trials.list': reads(MANAGERS, periodInOrder, trialsOutcome),
  'trials.addSample': changes(MANAGERS, z.strictObject({
    label: filled('Give the sample a name of its own, as it stands on its box.', 80), truth, basis: filled('Write how its origin is known.', 400),
  }), knownSampleView),
  'trials.withdrawSample': changes(MANAGERS, z.strictObject({ sampleId: id, reason: filled('Write why it is no longer used.', 400), originWrong: z.boolean().default(false) }), knownSampleView),
  /** Takes a trial back that was entered by mistake; it stays in the list. */
  'trials.withdraw': changes(MANAGERS, z.strictObject({ trialId: id, reason: filled('Write why the trial is taken back.', 400) }), trialView),
  /** A trial whose outcome is that of a stone of a case, confirmed by a second person. */
  'trials.addFromStone': changes(MANAGERS, z.strictObject({
    sampleId: id, caseNumber: filled('Write the number of the case.', 40), stoneLabel: filled('Write the label of the stone.', 20), blind: z.boolean(), remark: line(400).default(''), instrumentIds,
  }), trialView),
  /** A trial that left no stone in the casebook. */
  'trials.addByHand': changes(MANAGERS, z.strictObject({ sampleId: id, outcome: conclusionId, examinerId: id, examinedOn: calendarDay, blind: z.boolean(), remark: line(400).default(''), instrumentIds }), trialView),
};
