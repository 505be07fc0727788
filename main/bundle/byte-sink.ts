import { open, rename, rm } from 'node:fs/promises';

/** Where an archive is written to, piece by piece. */
export type ByteSink = {
  write(bytes: Uint8Array): Promise<void>;
  /** All is written. */
  finish(): Promise<void>;
  /** Something went wrong: nothing stays. */
  discard(): Promise<void>;
};

/** A file that takes its name only when it is whole; until then it lies beside it under another. Throws where the folder can't be written. */
export async function fileSink(file: string, uniqueSuffix: string): Promise<ByteSink> {
  const temporary = `${file}.${uniqueSuffix}.part`;
  const handle = await open(temporary, 'wx');
  let isOpen = true;
  const close = async (): Promise<void> => {
    if (isOpen) await handle.close();
    isOpen = false;
  };
  const discard = async (): Promise<void> => {
    await close();
    await rm(temporary, { force: true });
  };
  return {
    async write(bytes) {
      for (let done = 0; done < bytes.byteLength;) done += (await handle.write(bytes, done)).bytesWritten;
    },
    async finish() {
      try {
        await handle.sync();
        await close();
        await rename(temporary, file);
      } catch (fault) {
        await discard();
        throw fault;
      }
    },
    discard,
  };
}

/** Memory: for the bundle of one case, which the window saves itself. */
export function memorySink(): ByteSink & { whole(): Uint8Array<ArrayBuffer> } {
  const pieces: Uint8Array[] = [];
  return {
    async write(bytes) { pieces.push(bytes); },
    async finish() { /* nothing is left to do */ },
    async discard() { pieces.length = 0; },
    whole() {
      const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.byteLength, 0));
      let at = 0;
      for (const piece of pieces) {
        whole.set(piece, at);
        at += piece.byteLength;
      }
      return whole;
    },
  };
}
