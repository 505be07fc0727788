import { UPLOAD_PIECE_BYTES } from '../../app/contract/uploads.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Door } from '../../app/contract/index.ts';
import { err, ok, type Result } from '../../app/result.ts';

export type SendOptions = { readonly signal: AbortSignal; progress(sent: number, size: number): void };

const unreadable = (name: string): Failure => ({ code: 'unreadable', message: `“${name}” could not be read to its end: is it a folder, or was it moved or changed?`, next: 'Choose the file again.' });
const stopped: Failure = { code: 'cancelled', message: 'Stopped; nothing of the file was kept.', next: 'Choose the file again when you want it.' };

/**
 * Hands a file to the program piece by piece: one piece is in memory, however large the file is. Gives the name under which the program has it.
 * What was sent of a file that failed or was stopped is let go again.
 */
export async function sendFile(door: Pick<Door, 'call'>, file: Pick<File, 'name' | 'size' | 'slice'>, { signal, progress }: SendOptions): Promise<Result<string, Failure>> {
  const begun = await door.call('uploads.begin', { name: file.name.slice(-1000), size: file.size });
  if (!begun.ok) return begun;
  const { upload } = begun.value;
  const letGo = async (failure: Failure): Promise<Result<string, Failure>> => {
    await door.call('uploads.drop', { upload });
    return err(failure);
  };
  for (let at = 0; at < file.size; at += UPLOAD_PIECE_BYTES) {
    if (signal.aborted) return letGo(stopped);
    const end = Math.min(at + UPLOAD_PIECE_BYTES, file.size);
    let bytes: Uint8Array;
    try {
      bytes = new Uint8Array(await file.slice(at, end).arrayBuffer());
    } catch {
      return letGo(unreadable(file.name));
    }
    if (bytes.byteLength !== end - at) return letGo(unreadable(file.name));
    const sent = await door.call('uploads.piece', { upload, at, bytes });
    if (!sent.ok) return letGo(sent.error);
    progress(end, file.size);
  }
  return signal.aborted ? letGo(stopped) : ok(upload);
}
