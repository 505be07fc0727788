import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Failure } from '../../app/contract/failure.ts';
import { houseSettings } from '../../app/domain/house-settings.ts';
import type { Role } from '../../app/domain/role.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../../db/change.ts';
import { openCasebook, type Casebook } from '../../db/open-casebook.ts';
import { openFailure, type OpenFailure } from '../../db/open-failure.ts';
import type { FirstPerson, LaboratoryInput } from '../../db/store/laboratory.ts';
import type { Log } from '../host/log.ts';
import type { Standing } from '../host/refuse-by-role.ts';
import { keptCheckpoints } from '../checkpoints/checkpoint-files.ts';
import type { Outside } from '../../db/verify/checkpoints.ts';
import { dailyIsDue, ensureFolder, listBackups, thinBackups } from './backups.ts';
import { copyClosedFile, discardFile, moveFile } from './casebook-file.ts';
import { asideName, backupName, dataFiles, parseBackupName, type BackupKind, type DataFiles } from './data-files.ts';
import { folderWarning } from './folder-warning.ts';
import { readRemembered, writeRemembered, type Remembered } from './remembered.ts';

/** Fills an empty casebook with the demonstration; it sets up the laboratory itself, marked as a demonstration. */
export type BuildDemonstration = (casebook: Casebook, progress: (done: number, total: number, note: string) => void) => Promise<void>;

export type ManagerOptions = {
  readonly dataFolder: string;
  /** Where the files lie, if not in their usual places in the data folder. */
  readonly files?: DataFiles | undefined;
  readonly migrationsFolder: string;
  readonly now: () => Date;
  readonly newId: () => string;
  readonly log: Log;
  readonly buildDemonstration: BuildDemonstration;
};

export type Trouble = OpenFailure & { readonly book: 'own' | 'demonstration' };
export type BackupRow = { readonly file: string; readonly at: string };

export type CasebookManager = {
  /** The casebook that is open, or null. */
  current(): Casebook | null;
  /** Why the casebook that should be open is not. */
  trouble(): Trouble | null;
  /** Where the casebook is or will be. */
  file(): string;
  /** Sentence where the data folder endangers a casebook. */
  warning(): string | null;
  /** Backups of the laboratory's own casebook, newest first. */
  backups(): BackupRow[];
  /** Folder of the backups of the casebook that is open, and the name they begin with. */
  besideBackups(): { readonly folder: string; readonly book: 'Casebook' | 'Demonstration' };
  /** What is known of its ledgers from outside the file. */
  outside(): Outside;
  /** Notes outside the file how far the ledgers have come. Call before `close`. */
  noteHead(): Promise<void>;
  /** Opens what was open last. Call once, before the window asks. */
  openAtStart(): Promise<void>;
  /** `furnish` fills in what belongs to a new casebook beside its laboratory and first person, before it is put in place. */
  create(input: LaboratoryInput, person: FirstPerson, furnish?: (fresh: Casebook, personId: string) => Promise<void>): Promise<Result<{ personId: string }, Failure>>;
  openDemonstration(progress: (done: number, total: number, note: string) => void): Promise<Result<{ done: true }, Failure>>;
  /** Back to the laboratory's own casebook, or to the first choice where there is none. */
  closeDemonstration(): Promise<Result<{ done: true }, Failure>>;
  restore(backup: string, personId: string | null): Promise<Result<{ done: true }, Failure>>;
  backup(change: Change): Promise<Result<{ file: string; bytes: number }, Failure>>;
  standing(session: { readonly personId: string | null }): Promise<Standing>;
  close(): void;
};

/** How a failure to open stands in the answer to a call. */
function failureOf(f: OpenFailure): Failure {
  return { code: f.code === 'exists' ? 'conflict' : f.code === 'in-use' ? 'busy' : 'refused', message: f.message, next: f.next };
}

export function createCasebookManager(options: ManagerOptions): CasebookManager {
  const files = options.files ?? dataFiles(options.dataFolder);
  let casebook: Casebook | null = null;
  let trouble: Trouble | null = null;

  const open = (file: string, mustExist = true): Result<Casebook, OpenFailure> => openCasebook({
    file, mustExist, migrationsFolder: options.migrationsFolder, now: options.now, newId: options.newId,
    backupBeforeMigration: () => backupPath(file === files.demonstration ? 'Demonstration' : 'Casebook', 'before-update'),
  });

  function backupPath(book: 'Casebook' | 'Demonstration', kind: BackupKind): string {
    ensureFolder(files.backups);
    return join(files.backups, backupName(book, options.now(), kind));
  }

  const remember = (value: Partial<Remembered>): void => {
    writeRemembered(files.state, { ...readRemembered(files.state), ...value }, options.newId());
  };

  async function use(opened: Casebook, book: 'own' | 'demonstration'): Promise<void> {
    if (casebook !== null && casebook !== opened) casebook.close();
    casebook = opened;
    trouble = null;
    remember({ open: book, ...(book === 'own' && { ownKnown: true }) });
    const [first] = opened.guardsRestored;
    if (first === undefined) return;
    options.log.error('guards were missing and were put back', { count: opened.guardsRestored.length, first });
    // They are whole again at the next start: the ledger keeps that they once were not.
    await opened.audit.note({ at: options.now().toISOString(), personId: null, operation: 'casebook.open' }, { subject: 'guards', content: { restored: opened.guardsRestored } });
  }

  /** Opens a file that should hold a laboratory; anything else is trouble, told in sentences. */
  async function openExisting(book: 'own' | 'demonstration'): Promise<void> {
    const file = files[book];
    const opened = open(file);
    if (!opened.ok) {
      trouble = { ...opened.error, book };
      options.log.error('casebook can’t be opened', { code: opened.error.code });
      return;
    }
    if (await opened.value.laboratory.get() === null) {
      opened.value.close();
      trouble = { ...openFailure('not-a-casebook', file), book };
      return;
    }
    await use(opened.value, book);
  }

  async function dailyBackup(): Promise<void> {
    if (casebook === null || casebook.file !== files.own || !dailyIsDue(files.backups, options.now())) return;
    const made = await casebook.backup(backupPath('Casebook', 'daily'));
    if (made.ok) thinBackups(files.backups, 'Casebook');
    else options.log.error('the daily backup failed', { message: made.error.message });
  }

  /** Makes a whole new casebook under a temporary name and puts it in place only when it is complete. */
  async function make<T>(file: string, fill: (fresh: Casebook) => Promise<T>): Promise<Result<T, OpenFailure>> {
    ensureFolder(options.dataFolder);
    const temporary = `${file}.part`;
    discardFile(temporary);
    const fresh = open(temporary, false);
    if (!fresh.ok) return fresh;
    let filled: T;
    try {
      filled = await fill(fresh.value);
      fresh.value.close();
    } catch (e) {
      fresh.value.close();
      discardFile(temporary);
      throw e;
    }
    if (existsSync(file)) {
      discardFile(temporary);
      return err(openFailure('exists', file));
    }
    moveFile(temporary, file);
    return ok(filled);
  }

  async function buildDemonstration(progress: (done: number, total: number, note: string) => void): Promise<Result<null, OpenFailure>> {
    return make(files.demonstration, async (fresh) => {
      await options.buildDemonstration(fresh, progress);
      if ((await fresh.laboratory.get())?.isDemonstration !== true) throw new Error('the demonstration was built without its laboratory');
      return null;
    });
  }

  const bookOpen = (): 'Casebook' | 'Demonstration' => (casebook?.file === files.demonstration ? 'Demonstration' : 'Casebook');

  function leave(): void {
    casebook?.close();
    casebook = null;
    trouble = null;
  }

  /** A copy of the backup that opens, is brought up to this version and verifies, beside the present casebook. */
  async function soundCopy(backup: string): Promise<Result<string, Failure>> {
    const copy = `${files.own}.restore.part`;
    discardFile(copy);
    copyClosedFile(backup, copy);
    const opened = openCasebook({ file: copy, mustExist: true, migrationsFolder: options.migrationsFolder, now: options.now, newId: options.newId });
    if (!opened.ok) {
      discardFile(copy);
      return err(failureOf(opened.error));
    }
    const verified = await opened.value.ledgers.verify({ at: options.now().toISOString() });
    opened.value.close();
    if (verified?.sound === true) return ok(copy);
    discardFile(copy);
    const fault = verified?.parts.find((part) => !part.sound)?.fault ?? 'It could not be verified.';
    return err({ code: 'refused', message: `That backup is not sound: ${fault} Nothing was changed.`, next: 'Choose an older backup.' });
  }

  /** Keeps what is there now: a checked backup of a casebook that opens, the file itself of any. Refuses where another program has it open. */
  async function keepPresent(): Promise<Result<{ readonly entries: number }, Failure>> {
    let entries = 0;
    const present = casebook !== null && casebook.file === files.own ? ok(casebook) : open(files.own);
    if (!present.ok && present.error.code === 'in-use') return err(failureOf(present.error));
    if (present.ok) {
      const safety = await present.value.backup(backupPath('Casebook', 'before-restore'));
      entries = (await present.value.checkpoints.heads()).audit.seq;
      present.value.close();
      if (!safety.ok) {
        await openExisting('own');
        return err(failureOf(safety.error));
      }
    }
    leave();
    if (existsSync(files.own)) moveFile(files.own, asideName(files.own, options.now()));
    return ok({ entries });
  }

  return {
    current: () => casebook,
    trouble: () => trouble,
    file: () => casebook?.file ?? (trouble?.book === 'demonstration' ? files.demonstration : files.own),
    warning: () => folderWarning(options.dataFolder),
    backups: () => listBackups(files.backups, 'Casebook').map(({ name, at }) => ({ file: join(files.backups, name), at })),

    besideBackups: () => ({ folder: files.backups, book: bookOpen() }),
    outside: () => ({ kept: keptCheckpoints(files.backups), remembered: bookOpen() === 'Casebook' ? readRemembered(files.state).head ?? null : null }),
    async noteHead() {
      if (casebook === null || bookOpen() !== 'Casebook') return;
      const laboratory = await casebook.laboratory.get();
      if (laboratory !== null) remember({ head: { begun: laboratory.createdAt, at: options.now().toISOString(), audit: (await casebook.checkpoints.heads()).audit } });
    },

    async openAtStart() {
      ensureFolder(options.dataFolder);
      const last = readRemembered(files.state);
      if (last.open === 'demonstration' && existsSync(files.demonstration)) await openExisting('demonstration');
      else if (last.ownKnown || existsSync(files.own)) await openExisting('own');
      await dailyBackup();
    },

    async create(input, person, furnish) {
      if (existsSync(files.own) || readRemembered(files.state).ownKnown) return err(failureOf(openFailure('exists', files.own)));
      // Somebody must be able to change people and settings from the first day.
      const roles: Role[] = [...new Set<Role>([...person.roles, 'manager'])];
      const made = await make(files.own, async (fresh) => {
        const personId = await fresh.laboratory.create(
          options.now().toISOString(), { ...input, isDemonstration: false, settings: houseSettings.parse({}) }, { ...person, roles });
        await furnish?.(fresh, personId);
        return personId;
      });
      if (!made.ok) return err(failureOf(made.error));
      await openExisting('own');
      return trouble === null ? ok({ personId: made.value }) : err(failureOf(trouble));
    },

    async openDemonstration(progress) {
      if (casebook !== null && casebook.file === files.demonstration) return ok({ done: true });
      if (!existsSync(files.demonstration)) {
        const built = await buildDemonstration(progress);
        if (!built.ok) return err(failureOf(built.error));
      }
      const opened = open(files.demonstration);
      if (!opened.ok) return err(failureOf(opened.error));
      await use(opened.value, 'demonstration');
      return ok({ done: true });
    },

    async closeDemonstration() {
      const inDemonstration = casebook?.file === files.demonstration || trouble?.book === 'demonstration';
      if (!inDemonstration) return err({ code: 'refused', message: 'The demonstration casebook is not open.', next: 'Nothing needs to be left.' });
      leave();
      remember({ open: null });
      if (readRemembered(files.state).ownKnown || existsSync(files.own)) await openExisting('own');
      return ok({ done: true });
    },

    async restore(backup, personId) {
      const known = listBackups(files.backups, 'Casebook').find((file) => join(files.backups, file.name) === backup || file.name === backup);
      if (!known || parseBackupName(known.name) === null) {
        return err({ code: 'not-found', message: 'That file is not among the backups of this casebook.', next: `Backups lie in ${files.backups}; put the file there under its own name first.` });
      }
      const copy = await soundCopy(join(files.backups, known.name));
      if (!copy.ok) return copy;
      const kept = await keepPresent();
      if (!kept.ok) {
        discardFile(copy.value);
        return kept;
      }
      moveFile(copy.value, files.own);
      await openExisting('own');
      if (casebook === null) return err(failureOf(trouble ?? openFailure('damaged', files.own)));
      const who = personId === null ? null : await (casebook as Casebook).people.get(personId);
      await (casebook as Casebook).audit.note({ at: options.now().toISOString(), personId: who?.id ?? null, operation: 'casebook.restore' }, { subject: 'casebook', content: { backup: known.name, replaced: kept.value.entries } });
      return ok({ done: true });
    },

    async backup(change) {
      if (casebook === null) return err({ code: 'no-casebook', message: 'No casebook is open.', next: 'Open one first.' });
      const book = bookOpen();
      const made = await casebook.backup(backupPath(book, 'asked'));
      if (!made.ok) return err(failureOf(made.error));
      thinBackups(files.backups, book);
      await casebook.audit.note(change, { subject: 'casebook', content: { backup: made.value.file.slice(files.backups.length + 1), bytes: made.value.bytes } });
      return ok(made.value);
    },

    async standing(session) {
      const person = casebook === null || session.personId === null ? null : await casebook.people.get(session.personId);
      return { casebookOpen: casebook !== null, person: person?.active === true ? { name: person.name, roles: person.roles } : null };
    },

    close: leave,
  };
}
