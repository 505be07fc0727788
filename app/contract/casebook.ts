import { z } from 'zod';
import { houseSettings } from '../domain/house-settings.ts';
import { MAX_PASSWORD } from '../people/check-password.ts';
import { taskName } from './batch.ts';
import { bytes, digest, done, filled, instant, line, nothing } from './common.ts';
import { laboratoryView, personInput, personView } from './house-views.ts';
import { changes, reads } from './operation.ts';

export { laboratoryView, personView, type LaboratoryView, type PersonView } from './house-views.ts';

const zone = z.string().min(1, 'Choose the time zone.').max(60);
const logo = z.object({ mediaType: z.enum(['image/png', 'image/jpeg']), bytes });

export const casebookContract = {
  /** What the window shows first: the file, its laboratory, who works here; or that there is none yet, or why it can't be opened. */
  'casebook.status': reads('door', nothing, z.object({
    version: z.string(),
    host: z.enum(['electron', 'loopback']),
    hostNote: z.string(),
    file: z.string(),
    state: z.enum(['none', 'open', 'unusable']),
    trouble: z.object({ message: z.string(), next: z.string(), backups: z.array(z.object({ file: z.string(), at: instant })) }).nullable(),
    laboratory: laboratoryView.nullable(),
    /** Before anybody signed in: only as far as the house lets names be seen. `opensWith`: code must be replaced at the first sign-in; nothing: in the demonstration, or before one was chosen. */
    people: z.array(personView.extend({ opensWith: z.enum(['password', 'code', 'nothing']) })),
    /** Who works at this window. */
    me: personView.nullable(),
    /** The window answers nothing until a password is given; `me` says whose. */
    locked: z.boolean(),
    /** Triggers that had to be put back when the file was opened: someone may have altered it. */
    guardsRestored: z.array(z.string()),
  })),
  /** `recovery`: what stands on the recovery sheet; it is told once. */
  'casebook.create': changes('door', z.strictObject({
    name: filled('Write the laboratory’s name as it stands on its reports.', 160),
    address: line(400), zone, logo: logo.nullable(),
    person: personInput.extend({ password: z.string().max(2 * MAX_PASSWORD, `At most ${MAX_PASSWORD} characters.`) }),
  }), z.object({ done: z.literal(true), recovery: z.string() })),
  'casebook.openDemonstration': changes('door', nothing, done),
  /** Leaves the demonstration casebook and returns to the first choice; the file stays. */
  'casebook.closeDemonstration': changes('door', nothing, done),
  'casebook.restore': changes('door', z.strictObject({ file: z.string().max(1000) }), done),
  'casebook.backup': changes(['manager'], nothing, z.object({ file: z.string(), bytes: z.number() })),
  'laboratory.save': changes(['manager'], z.strictObject({
    name: filled('Write the laboratory’s name.', 160), address: line(400), zone, logo: logo.nullable(), settings: houseSettings,
  }), laboratoryView),
  'drafts.get': reads('anyone', z.strictObject({ key: z.string().max(120) }), z.object({ content: z.unknown().nullable(), updatedAt: instant.nullable() })),
  'drafts.put': reads('anyone', z.strictObject({ key: z.string().max(120), content: z.unknown() }), z.object({ updatedAt: instant })),
  'drafts.remove': reads('anyone', z.strictObject({ key: z.string().max(120) }), done),
  /** Recomputes both ledgers and the digests of raw records, curves, issued reports and every row that the audit ledger vouches for; names the first entry that does not fit. Progress and stopping go by `task`. */
  'ledgers.verify': reads('anyone', z.strictObject({ task: taskName.optional() }), z.lazy(() => verification)),
};

export const verification = z.object({
  sound: z.boolean(),
  at: instant,
  parts: z.array(z.object({
    part: z.enum(['custody ledger', 'audit ledger', 'raw records', 'spectra', 'issued reports', 'bundles taken in', 'facts and findings', 'checkpoints', 'guards', 'database']),
    checked: z.number(), sound: z.boolean(),
    /** Sentence that names the first thing that does not fit, or null. */
    fault: z.string().nullable(),
    head: digest.nullable(),
    /** What was not checked and is no fault, in a sentence. */
    note: z.string().optional(),
  })),
});
export type Verification = z.infer<typeof verification>;
