import type { Verification } from '../../app/contract/casebook.ts';
import type { Found, Piece } from '../../db/verify/pieces.ts';
import type { VerifyWhat } from '../../db/verify/verify-casebook.ts';

/** What a thread is started with. The one that leads starts those that help it. */
export type ThreadData = {
  readonly role: 'lead' | 'help';
  readonly file: string;
  /** The file is held still by the process and read past its lock. */
  readonly still: boolean;
  /** Of the one that leads: what to verify, the bundle of its helpers, and how many. */
  readonly lead?: { readonly what: VerifyWhat; readonly workerFile: string; readonly helpers: number };
};

/** From the one that leads. `cannot-open`: this machine does not let the file be read so. */
export type LeadMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'done'; readonly verification: Verification }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'cannot-open' }
  | { readonly kind: 'fault'; readonly stack: string };

/** To the one that leads, and to its helpers: done with, let go of the file. A thread that holds a connection is never ended from outside: on older Node that ends the program. */
export type EndMessage = { readonly end: true };

/** To a helper. */
export type PieceMessage = { readonly job: number; readonly piece: Piece };

/** From a helper; `code` is SQLite's, where it threw. */
export type HelperMessage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'more'; readonly more: number }
  | { readonly kind: 'found'; readonly job: number; readonly found: Found }
  | { readonly kind: 'failed'; readonly job: number; readonly message: string; readonly code: string };
