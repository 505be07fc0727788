import { useEffect, useRef, useState } from 'react';
import type { BundleVerdict } from '../../app/bundle/bundle-verdict.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { MAX_REPORT_BYTES, MAX_UPLOAD_BYTES } from '../../app/contract/uploads.ts';
import type { ReportVerdict } from '../../app/signature/report-verdict.ts';
import { door } from '../door.ts';
import { sendFile } from '../uploads/send-file.ts';

/** How every zip begins (PKWARE APPNOTE 4.3.7). */
const ZIP = [0x50, 0x4b, 0x03, 0x04];

type Named = { readonly name: string };
/** Where a file that somebody brought is: none, on its way or being checked, or answered. `upload`: under which the program has it. */
export type BroughtFile =
  | { readonly state: 'none' }
  | Named & { readonly state: 'sending'; readonly sent: number; readonly size: number }
  | Named & { readonly state: 'checking'; readonly upload: string }
  | Named & { readonly state: 'failed'; readonly failure: Failure }
  | Named & { readonly state: 'report'; readonly verdict: ReportVerdict }
  | Named & { readonly state: 'bundle'; readonly verdict: BundleVerdict; readonly upload: string };

/** Whether a file is meant to be a bundle and not a report: by its name, or by its first bytes. */
async function isZip(file: File): Promise<boolean> {
  if (/\.zip$/i.test(file.name)) return true;
  const beginning = new Uint8Array(await file.slice(0, ZIP.length).arrayBuffer());
  return ZIP.every((byte, i) => beginning[i] === byte);
}

const tooLarge = (name: string, words: string): Failure => ({ code: 'refused', message: `“${name}” is larger than ${words} and was not looked at.`, next: 'Choose the file as the laboratory handed it out.' });

async function sendAndCheck(file: File, stop: AbortController, show: (next: BroughtFile) => void): Promise<BroughtFile> {
  const { name, size } = file;
  const failed = (failure: Failure): BroughtFile => ({ state: 'failed', name, failure });
  let zip: boolean;
  try {
    zip = await isZip(file);
  } catch {
    return failed({ code: 'unreadable', message: `“${name}” could not be opened: is it a folder, or was it moved?`, next: 'Choose a file.' });
  }
  if (size > (zip ? MAX_UPLOAD_BYTES : MAX_REPORT_BYTES)) return failed(zip ? tooLarge(name, '4 GB') : tooLarge(name, '512 MB'));
  const sent = await sendFile(door, file, { signal: stop.signal, progress: (done) => { show({ state: 'sending', name, sent: done, size }); } });
  if (!sent.ok) return failed(sent.error);
  const upload = sent.value;
  const drop = (): void => { void door.call('uploads.drop', { upload }); };
  // Whoever stops it lets go of it: the check ends with it.
  stop.signal.addEventListener('abort', drop, { once: true });
  show({ state: 'checking', name, upload });
  if (zip) {
    const verdict = await door.call('bundles.check', { upload });
    if (verdict.ok) return { state: 'bundle', name, verdict: verdict.value, upload };
    drop();
    return failed(verdict.error);
  }
  const verdict = await door.call('reports.check', { upload });
  drop();
  return verdict.ok ? { state: 'report', name, verdict: verdict.value } : failed(verdict.error);
}

/** Carries a file to the program and has it checked. A bundle stays there, to be taken in, until another file comes or the place is left. */
export function useBroughtFile(): { readonly brought: BroughtFile; take(file: File): void; stop(): void } {
  const [brought, setBrought] = useState<BroughtFile>({ state: 'none' });
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => { running.current?.abort(); }, []);
  return {
    brought,
    take(file) {
      running.current?.abort();
      const stop = new AbortController();
      running.current = stop;
      const show = (next: BroughtFile): void => { if (running.current === stop && !stop.signal.aborted) setBrought(next); };
      show({ state: 'sending', name: file.name, sent: 0, size: file.size });
      void sendAndCheck(file, stop, show).then(show);
    },
    stop() {
      running.current?.abort();
      setBrought({ state: 'none' });
    },
  };
}
