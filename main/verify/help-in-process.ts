import { openReader } from '../../db/open-reader.ts';
import { cannotOpen, createPieceDoer } from './do-pieces.ts';
import { readFrame, writeFrame } from './frames.ts';
import { HELPER_PIPE } from './helper-switch.ts';
import type { OpenMessage, PieceMessage } from './verify-messages.ts';

/** Kinds of pieces; anything else that comes is not from the program. */
const KINDS: Readonly<Record<PieceMessage['piece']['kind'], true>> = {
  audit: true, custody: true, records: true, rows: true, file: true, layout: true, count: true, numbers: true, withdrawn: true, checkpoints: true, guards: true, name: true,
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;

const isOpen = (message: unknown): message is OpenMessage =>
  isObject(message) && isObject(message['open']) && typeof message['open']['file'] === 'string' && typeof message['open']['still'] === 'boolean';

const isPiece = (message: unknown): message is PieceMessage =>
  isObject(message) && typeof message['job'] === 'number' && isObject(message['piece']) && typeof message['piece']['kind'] === 'string' && Object.hasOwn(KINDS, message['piece']['kind']);

/** How a helper ends: what it was asked for was done, or it was asked by nobody it knows. */
export type HelperEnd = 'done' | 'refused';

async function help(fd: number): Promise<HelperEnd> {
  const first = readFrame(fd);
  if (!isOpen(first)) return 'refused';
  let reader;
  try {
    reader = openReader(first.open.file, first.open.still);
  } catch (fault) {
    if (!cannotOpen(fault)) throw fault;
    writeFrame(fd, { kind: 'cannot-open' });
    return 'done';
  }
  const doPiece = createPieceDoer(reader.db, (message) => { writeFrame(fd, message); });
  writeFrame(fd, { kind: 'ready' });
  for (;;) {
    const message = readFrame(fd);
    if (message === undefined) return 'done';
    if (!isPiece(message)) return 'refused';
    await doPiece(message);
  }
}

/**
 * Does pieces for the process that started this one, over a pipe it opened, until that process lets go of it or is gone. It waits for
 * messages without letting anything else run, and so before Electron goes on to its window, its display and its further processes.
 */
export async function helpInProcess(): Promise<HelperEnd> {
  try {
    return await help(HELPER_PIPE);
  } catch {
    // No pipe, or nobody at its other end any more.
    return 'refused';
  }
}
