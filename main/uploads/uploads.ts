import { readdirSync, rmSync } from 'node:fs';
import { mkdir, open, rm, statfs, type FileHandle } from 'node:fs/promises';
import path from 'node:path';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { BundleCheck } from '../../app/bundle/judge-bundle.ts';
import type { Session } from '../services/service.ts';

/** What checking found of a bundle that lies here. */
export type CheckedBundle = { readonly check: BundleCheck; readonly sha256: string };

/** A file that came whole. */
export type Upload = {
  readonly id: string;
  /** As the person's file was named. */
  readonly name: string;
  /** Where it lies now. */
  readonly file: string;
  readonly size: number;
  /** Ends when it is dropped. */
  readonly signal: AbortSignal;
  /** Set once it was checked as a bundle: keeping it needs no second check, only the same digest. */
  checked: CheckedBundle | null;
};

/** Files on their way from a window. A window has one at a time, and sees only its own. */
export type Uploads = {
  begin(session: Session, name: string, size: number): Promise<Result<string, Failure>>;
  /** How many bytes are there now. */
  piece(session: Session, id: string, at: number, bytes: Uint8Array): Promise<Result<number, Failure>>;
  whole(session: Session, id: string): Result<Upload, Failure>;
  drop(session: Session, id: string): Promise<void>;
  /** Lets go of all: the program ends. */
  close(): Promise<void>;
};

/** What is needed of a disk; tests hand in one that is full. */
export type Disk = {
  /** Bytes that are free where `folder` lies. */
  free(folder: string): Promise<number>;
  open(file: string): Promise<Pick<FileHandle, 'write' | 'close'>>;
};

export const realDisk: Disk = {
  async free(folder) {
    const { bavail, bsize } = await statfs(folder);
    return bavail * bsize;
  },
  // Nobody else on the machine is to read what a client handed in.
  open: (file) => open(file, 'wx', 0o600),
};

const ENDING = '.part';
/** Left free for the casebook itself, bytes. */
const SPARE_BYTES = 64 * 1024 * 1024;

/** Removes what a program left that was ended while files were on their way. */
export function sweepUploads(folder: string): void {
  try {
    for (const name of readdirSync(folder)) if (name.endsWith(ENDING)) rmSync(path.join(folder, name), { force: true });
  } catch {
    // Not there, or not to be read: then nothing was left, or nothing can be done about it.
  }
}

const gone = (): { readonly ok: false; readonly error: Failure } => err({ code: 'not-found', message: 'The file is no longer here.', next: 'Choose it again.' });
const cannotWrite = (folder: string, fault: unknown): { readonly ok: false; readonly error: Failure } => {
  const reason = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
  return err({ code: 'refused', message: reason === 'ENOSPC' ? `The disk of ${folder} is full; the file was let go again.` : `The file could not be laid into ${folder} (${reason}).`, next: 'Make room on that disk, or see that Culet may write there, then choose the file again.' });
};

type Coming = Upload & { readonly session: Session; readonly handle: Pick<FileHandle, 'write' | 'close'>; readonly stop: AbortController; received: number; /** The last write, so that pieces never overlap. */ last: Promise<unknown>; isOpen: boolean };

export function createUploads({ folder, newId, disk = realDisk }: { folder(): string; newId(): string; readonly disk?: Disk }): Uploads {
  const coming = new Map<string, Coming>();
  const own = (session: Session, id: string): Coming | null => {
    const found = coming.get(id);
    return found?.session === session ? found : null;
  };

  async function shut(one: Coming): Promise<void> {
    if (!one.isOpen) return;
    one.isOpen = false;
    await one.handle.close();
  }

  async function letGo(one: Coming): Promise<void> {
    coming.delete(one.id);
    one.stop.abort();
    await one.last.catch(() => undefined);
    await shut(one).catch(() => undefined);
    // A thread that was reading it may hold it for a moment still.
    await rm(one.file, { force: true, maxRetries: 5, retryDelay: 100 }).catch(() => undefined);
  }

  return {
    async begin(session, name, size) {
      for (const one of [...coming.values()].filter((other) => other.session === session)) await letGo(one);
      const where = folder();
      try {
        await mkdir(where, { recursive: true });
        const free = await disk.free(where);
        if (free < size + SPARE_BYTES) return err({ code: 'refused', message: `There is not enough room in ${where} to look at a file of ${Math.ceil(size / 1e6)} MB: ${Math.floor(free / 1e6)} MB are free.`, next: 'Make room on that disk, then choose the file again.' });
        const id = newId();
        const file = path.join(where, `${id}${ENDING}`);
        const stop = new AbortController();
        const one: Coming = { id, name, file, size, signal: stop.signal, checked: null, session, handle: await disk.open(file), stop, received: 0, last: Promise.resolve(), isOpen: true };
        coming.set(id, one);
        // No piece will come of an empty file.
        if (size === 0) await shut(one);
        return ok(id);
      } catch (fault) {
        return cannotWrite(where, fault);
      }
    },

    async piece(session, id, at, bytes) {
      const one = own(session, id);
      if (one === null) return gone();
      if (at !== one.received || at + bytes.byteLength > one.size) {
        await letGo(one);
        return err({ code: 'refused', message: 'The pieces of the file did not come in their order, or the file changed meanwhile; it was let go again.', next: 'Choose the file again.' });
      }
      one.received += bytes.byteLength;
      const write = async (): Promise<void> => {
        for (let done = 0; done < bytes.byteLength;) done += (await one.handle.write(bytes, done, bytes.byteLength - done, at + done)).bytesWritten;
        if (one.received === one.size) await shut(one);
      };
      try {
        await (one.last = one.last.then(write));
        return coming.has(id) ? ok(one.received) : gone();
      } catch (fault) {
        await letGo(one);
        return cannotWrite(path.dirname(one.file), fault);
      }
    },

    whole(session, id) {
      const one = own(session, id);
      if (one === null) return gone();
      return one.received === one.size && !one.isOpen ? ok(one) : err({ code: 'refused', message: `Only ${one.received} of ${one.size} bytes of the file are here.`, next: 'Choose the file again.' });
    },

    async drop(session, id) {
      const one = own(session, id);
      if (one !== null) await letGo(one);
    },

    async close() {
      await Promise.all([...coming.values()].map(letGo));
    },
  };
}
