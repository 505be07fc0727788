import { z } from 'zod';
import { DEFAULT_PROTOCOLS } from '../protocol/default-protocols.ts';
import { defaultSieves, sieveTable } from '../lots/sieve-table.ts';
import { protocols } from '../protocol/protocol.ts';

/** A copy of its own for every casebook: settings are edited. */
const defaultProtocols = () => DEFAULT_PROTOCOLS.map((one) => ({ ...one, steps: one.steps.map((step) => ({ ...step })) }));

/** What a laboratory may set for itself. Values that the literature leaves unsettled stand here, not in code. */
export const houseSettings = z.object({
  pageSize: z.enum(['A4', 'Letter']).default('A4'),
  /** Weights of an item in and out may differ by this much, 0.0001 ct: common practice, no source. */
  weightToleranceCarat: z.number().int().min(0).max(10_000).default(20),
  /** The same for pieces weighed in grams, 0.00001 g. */
  weightToleranceGram: z.number().int().min(0).max(100_000).default(1_000),
  /** Standard uncertainty of a weight on the house's balances, 0.0001 ct and 0.00001 g, from their calibration; 0 is not stated, and nothing is printed beside a weight. */
  balanceUncertaintyCarat: z.number().int().min(0).max(10_000).default(0),
  balanceUncertaintyGram: z.number().int().min(0).max(100_000).default(0),
  /** Standard uncertainty of one reading of a loose stone's dimensions, mm, from the calibration of the gauge; 0 is not stated, and nothing is printed beside them. */
  dimensionUncertaintyMm: z.number().min(0).max(0.5).default(0),
  /** Absorption coefficient of the two-phonon minimum near 1992 cm-1 (published 11.8 to 12.3): sets the scale of every nitrogen value. */
  twoPhononCoefficient: z.number().min(10).max(14).default(12),
  /** Days before the due date from which a case is shown as due. */
  dueSoonDays: z.number().int().min(0).max(60).default(7),
  /** Raw records travel inside a report up to this many megabytes together; larger letters are refused by many mail services: common practice, no source. */
  attachMegabytes: z.number().int().min(0).max(200).default(20),
  /** Holes of the house's sieve plates. Makers differ by hundredths of a millimetre: common practice, no source. */
  sieves: sieveTable.default(() => defaultSieves()),
  /** Confidence of a lot's plan and statement unless the plan says otherwise, per cent: common practice, no source. */
  lotConfidence: z.number().min(50).max(99.99).default(95),
  /** Standard uncertainty of one reading of a mounted stone's measures, mm: common practice, no source. */
  readingMm: z.number().min(0.005).max(0.5).default(0.05),
  /** Storage places of the house, as they are offered when something is put away: "safe, shelf 2". */
  places: z.array(z.string().trim().min(1).max(120)).max(200).default([]),
  /** A window that nobody touches locks itself after so many minutes: common practice, no source. */
  idleMinutes: z.number().int().min(1).max(120).default(10),
  /** Whether a second person states a conclusion of their own before they are shown the first one: only then do two readings say how well two persons agree. */
  secondReadsFirst: z.boolean().default(false),
  /** Since when without a break, UTC ISO 8601; written by the casebook when the setting is switched. What was concluded before it could be seen, and is no first reading. */
  secondReadsFirstSince: z.string().nullable().default(null),
  /** Share of what comes in that is not natural, per cent: an assumption of the house about its clients, and no finding. What a trial says of a stone that passed depends on it. 2 is an example, no source. */
  assumedNotNatural: z.number().min(0).max(100).default(2),
  /** Whether the names of those who work here can be seen before anybody signed in; else a name is typed. */
  showNames: z.boolean().default(true),
  /** Where the readers of the house's reports live: decides whether “synthetic” is pointed out (16 CFR Part 23 is wary of it, ISO 18323:2015 permits it). */
  readers: z.enum(['international', 'united-states']).default('international'),
  /** Which tests are asked for, by purpose. */
  protocols: protocols.default(() => defaultProtocols()),
  scopeText: z.string().max(4000).default(
    'Screening of colourless to near colourless diamonds for natural or laboratory-grown origin by the methods named in this report. It is an opinion of the undersigned based on the findings listed, and relates only to the items described, as received.'),
  limitsText: z.string().max(4000).default(
    'Screening does not grade quality and does not value. Mounted stones allow only part of the tests. Origin is not stated where the findings do not suffice. No single finding decides: lines of silicon, nickel and nitrogen occur in natural and in laboratory-grown diamond. Treatments are named only where a finding shows them.'),
});
export type HouseSettings = z.infer<typeof houseSettings>;
