import { z } from 'zod';
import { PICTURE_KINDS } from '../custody/check-picture.ts';
import { colourClass } from '../domain/colour-class.ts';
import { conclusionId } from '../domain/conclusion.ts';
import { custodyEvent } from '../domain/custody-event.ts';
import { bytes, day, digest, done, filled, id, instant, line, nothing } from './common.ts';
import { CASE_SORTS, listPage, sortedBy, STONE_SORTS } from './list-page.ts';
import { changes, reads } from './operation.ts';

export const clientView = z.object({ id, name: z.string(), address: z.string(), email: z.string(), phone: z.string(), note: z.string(), cases: z.number() });
export type ClientView = z.infer<typeof clientView>;

export const itemKind = z.enum(['loose', 'jewellery', 'lot']);
export const settingKind = z.enum(['open-back', 'closed-back']);
export const lightKind = z.enum(['white', 'long-wave', 'short-wave', 'polarised', 'drawing']);
export const caseState = z.enum(['open', 'reported', 'returned']);

export const photoInput = z.strictObject({ name: line(255), mediaType: z.enum(PICTURE_KINDS), bytes, caption: line(200), light: lightKind });

const stoneInput = z.strictObject({
  position: line(120), shape: line(80), measurements: line(120), colourClass,
  /** 0.0001 ct, null where it can't be weighed (mounted). */
  weight: z.number().int().min(0).nullable(),
});

const itemInput = z.strictObject({
  kind: itemKind,
  declared: filled('Write what the client says it is.', 600),
  declaredValue: line(60),
  grossWeight: z.number().int().min(1, 'A weight must be more than nothing.').nullable(),
  weightUnit: z.enum(['ct', 'g']),
  count: z.number().int().min(1, 'Count at least one stone.').max(1_000_000).nullable(),
  setting: settingKind.nullable(),
  condition: line(1000),
  stones: z.array(stoneInput).max(500),
  photographs: z.array(photoInput).max(20),
});

/** One hand-over, as it is written down at the counter. */
export const intakeInput = z.strictObject({
  client: z.union([
    z.strictObject({ existing: id }),
    z.strictObject({ name: filled('Write the client’s name.', 160), address: line(400), email: line(200), phone: line(60), note: line(1000) }),
  ]),
  asks: filled('Write what the client asks for.', 600),
  dueOn: day.nullable(),
  remarks: line(2000),
  place: filled('Write where the items are put now.', 120),
  broughtBy: line(160),
  parcels: z.array(z.strictObject({
    sealNumber: line(60), remarks: line(600), items: z.array(itemInput).min(1, 'A parcel holds at least one item.').max(100),
  })).min(1, 'A case holds at least one parcel.').max(50),
});
export type IntakeInput = z.infer<typeof intakeInput>;

export const stoneSummary = z.object({
  id, label: z.string(), itemId: id, mounted: z.boolean(), position: z.string(), shape: z.string(), weight: z.number().nullable(),
  measurements: z.string(), colourClass, runs: z.number(),
  /** Null where nobody has concluded, or (stage `concluded`) where it is withheld from this person until they have stated theirs. */
  conclusion: conclusionId.nullable(),
  /** open · concluded (waits for the second person) · confirmed · disagreed */
  stage: z.enum(['open', 'concluded', 'confirmed', 'disagreed']),
});
export type StoneSummary = z.infer<typeof stoneSummary>;

export const photographView = z.object({
  id, itemId: id.nullable(), stoneId: id.nullable(), caption: z.string(), light: lightKind, at: instant,
  name: z.string(), mediaType: z.string(), size: z.number(), sha256: digest,
});
export type PhotographView = z.infer<typeof photographView>;

/** With whom an item is outside the house, and by which day it is expected back. */
export const outOfHouse = z.object({ to: z.string(), since: instant, dueBack: day.nullable(), purpose: z.string() });

export const itemView = z.object({
  id, label: z.string(), kind: itemKind, declared: z.string(), declaredValue: z.string(), grossWeight: z.number().nullable(),
  weightUnit: z.enum(['ct', 'g']), count: z.number().nullable(), setting: settingKind.nullable(), condition: z.string(),
  /** From the custody ledger: where it is now, in whose hands, under which seal, and whether a weight differed. */
  custody: z.object({ place: z.string(), holder: z.string(), seal: z.string(), lastEvent: custodyEvent, at: instant, differs: z.boolean(), out: outOfHouse.nullable() }),
  stones: z.array(stoneSummary), photographs: z.array(photographView),
});
export type ItemView = z.infer<typeof itemView>;

export const caseView = z.object({
  id, number: z.string(), client: clientView, receivedAt: instant, dueOn: z.string().nullable(), asks: z.string(), remarks: z.string(),
  state: caseState, createdBy: z.string(),
  parcels: z.array(z.object({ id, ordinal: z.number(), sealNumber: z.string(), remarks: z.string(), items: z.array(itemView) })),
  /** Photographs of the case as a whole. */
  photographs: z.array(photographView),
});
export type CaseView = z.infer<typeof caseView>;

export const caseRow = z.object({
  id, number: z.string(), clientName: z.string(), summary: z.string(), asks: z.string(), receivedAt: instant, dueOn: z.string().nullable(),
  state: caseState, stones: z.number(), concluded: z.number(), confirmed: z.number(), place: z.string(), next: z.string(),
});
export type CaseRow = z.infer<typeof caseRow>;

export const auditView = z.object({
  seq: z.number(), at: instant, person: z.string(), operation: z.string(), subject: z.string(), caseNumber: z.string().nullable(),
  content: z.string(), previous: digest, hash: digest,
});
export type AuditView = z.infer<typeof auditView>;

export const casesContract = {
  'clients.search': reads('anyone', z.strictObject({ text: line(120) }), z.array(clientView)),
  'clients.save': changes(['intake', 'manager'], z.strictObject({ id: id.nullable(), name: filled('Write the client’s name.', 160), address: line(400), email: line(200), phone: line(60), note: line(1000) }), clientView),
  'cases.takeIn': changes(['intake', 'examiner', 'manager'], intakeInput, z.object({ caseId: id, number: z.string() })),
  'cases.get': reads('anyone', z.strictObject({ caseId: id }), caseView),
  /** Newest first unless sorted otherwise. Text is looked for in number, client, declared descriptions and remarks. */
  'cases.list': reads('anyone', z.strictObject({ text: line(120).default(''), state: z.enum(['all', 'open', 'reported', 'returned']).default('all'), sort: sortedBy(CASE_SORTS), ...listPage }), z.object({ total: z.number(), rows: z.array(caseRow) })),
  'cases.amend': changes(['intake', 'examiner', 'manager'], z.strictObject({ caseId: id, asks: filled('Write what the client asks for.', 600), dueOn: day.nullable(), remarks: line(2000) }), done),
  'stones.list': reads('anyone', z.strictObject({ text: line(120).default(''), sort: sortedBy(STONE_SORTS), ...listPage }), z.object({
    total: z.number(), rows: z.array(stoneSummary.extend({ caseId: id, caseNumber: z.string(), clientName: z.string(), declared: z.string() })) })),
  'stones.add': changes(['intake', 'examiner', 'manager'], stoneInput.extend({ itemId: id, mounted: z.boolean() }), stoneSummary),
  'stones.amend': changes(['intake', 'examiner', 'manager'], stoneInput.extend({ stoneId: id }), stoneSummary),
  'photographs.add': changes(['intake', 'examiner', 'second-examiner', 'manager'], photoInput.extend({ caseId: id, itemId: id.nullable(), stoneId: id.nullable() }), photographView),
  'photographs.content': reads('anyone', z.strictObject({ photographId: id }), z.object({ mediaType: z.string(), name: z.string(), bytes: z.instanceof(Uint8Array) })),
  'audit.list': reads('anyone', z.strictObject({ caseId: id.nullable(), ...listPage }), z.object({ total: z.number(), rows: z.array(auditView) })),
  /** What to do today. */
  'bench.today': reads('anyone', nothing, z.object({
    today: day, overdue: z.array(caseRow), dueSoon: z.array(caseRow), later: z.array(caseRow),
    /** Reported and not yet collected. */
    waiting: z.array(caseRow),
    /** Concluded stones that the person at this window may confirm (not concluded by them). */
    toConfirm: z.array(z.object({ stoneId: id, caseId: id, caseNumber: z.string(), label: z.string(), /** Null where it is withheld from this person. */ conclusion: conclusionId.nullable(), by: z.string(), at: instant })),
    house: z.object({ itemsInCustody: z.number(), itemsOut: z.number(), itemsOverdue: z.number(), weightsAgree: z.number(), weightsCompared: z.number() }),
    counts: z.object({ cases: z.number(), stones: z.number(), reports: z.number(), instrumentsToCheck: z.number(), custodyEntries: z.number(), auditEntries: z.number() }),
    drafts: z.array(z.object({ key: z.string(), updatedAt: instant })),
  })),
  /** Everything by its number, name or words, for the palette: cases, lots, stones, clients, reports. */
  'find.anything': reads('anyone', z.strictObject({ text: line(120) }), z.array(z.object({ kind: z.enum(['case', 'lot', 'stone', 'client', 'report', 'sealed']), /** Of a case in a bundle: “BUNDLE/FOLDER”. */ id: z.string(), caseId: id.nullable(), title: z.string(), detail: z.string() }))),
};
