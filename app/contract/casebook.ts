import { z } from 'zod';
import { houseSettings } from '../domain/house-settings.ts';
import { role } from '../domain/role.ts';
import { bytes, digest, done, filled, id, instant, line, nothing } from './common.ts';
import { changes, reads } from './operation.ts';

export const personView = z.object({ id, name: z.string(), initials: z.string(), roles: z.array(role), active: z.boolean() });
export type PersonView = z.infer<typeof personView>;

export const laboratoryView = z.object({
  name: z.string(), address: z.string(), zone: z.string(), isDemonstration: z.boolean(),
  logo: z.object({ mediaType: z.string(), bytes: z.instanceof(Uint8Array) }).nullable(),
  settings: houseSettings, createdAt: instant,
});
export type LaboratoryView = z.infer<typeof laboratoryView>;

const personInput = z.strictObject({
  name: filled('Write the person’s name.', 120),
  initials: filled('Write two to six letters.', 8),
  roles: z.array(role).min(1, 'Choose at least one role.'),
});

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
    people: z.array(personView),
    /** Who works at this window. */
    me: personView.nullable(),
    /** Triggers that had to be put back when the file was opened: someone may have altered it. */
    guardsRestored: z.array(z.string()),
  })),
  'casebook.create': changes('door', z.strictObject({
    name: filled('Write the laboratory’s name as it stands on its reports.', 160),
    address: line(400), zone, logo: logo.nullable(), person: personInput,
  }), done),
  'casebook.openDemonstration': changes('door', nothing, done),
  /** Leaves the demonstration casebook and returns to the first choice; the file stays. */
  'casebook.closeDemonstration': changes('door', nothing, done),
  'casebook.restore': changes('door', z.strictObject({ file: z.string().max(1000) }), done),
  'casebook.backup': changes(['manager'], nothing, z.object({ file: z.string(), bytes: z.number() })),
  'laboratory.save': changes(['manager'], z.strictObject({
    name: filled('Write the laboratory’s name.', 160), address: line(400), zone, logo: logo.nullable(), settings: houseSettings,
  }), laboratoryView),
  'people.list': reads('anyone', nothing, z.array(personView)),
  'people.save': changes(['manager'], personInput.extend({ id: id.nullable(), active: z.boolean() }), personView),
  /** Says who works at this window from now on. Without passwords this is a statement, not a proof: the window says so. */
  'people.actAs': changes('door', z.strictObject({ personId: id }), personView),
  'drafts.get': reads('anyone', z.strictObject({ key: z.string().max(120) }), z.object({ content: z.unknown().nullable(), updatedAt: instant.nullable() })),
  'drafts.put': reads('anyone', z.strictObject({ key: z.string().max(120), content: z.unknown() }), z.object({ updatedAt: instant })),
  'drafts.remove': reads('anyone', z.strictObject({ key: z.string().max(120) }), done),
  /** Recomputes both ledgers and the digests of raw records, curves, issued reports and every row that the audit ledger vouches for; names the first entry that does not fit. */
  'ledgers.verify': reads('anyone', nothing, z.lazy(() => verification)),
};

export const verification = z.object({
  sound: z.boolean(),
  at: instant,
  parts: z.array(z.object({
    part: z.enum(['custody ledger', 'audit ledger', 'raw records', 'spectra', 'issued reports', 'facts and findings', 'guards', 'database']),
    checked: z.number(), sound: z.boolean(),
    /** Sentence that names the first thing that does not fit, or null. */
    fault: z.string().nullable(),
    head: digest.nullable(),
    /** What was not checked and is no fault, in a sentence. */
    note: z.string().optional(),
  })),
});
export type Verification = z.infer<typeof verification>;
