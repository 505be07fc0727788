import type { Verification } from '../../app/contract/casebook.ts';
import type { Found, Piece } from '../../db/verify/pieces.ts';
import type { VerifyWhat } from '../../db/verify/verify-casebook.ts';

/** A file that is verified. `still`: the process that has it open holds it still, and it is read past that process’s lock. */
export type VerifyFile = { readonly file: string; readonly still: boolean };

/** Who does the pieces: threads of this process from a bundle, or further processes of the program. */
export type HelpersBy =
  | { readonly kind: 'threads'; readonly workerFile: string }
  | { readonly kind: 'processes'; readonly program: string; readonly args: readonly string[] };

/** What a thread is started with: one leads and has no connection, those that help it have one each. */
export type ThreadData =
  | (VerifyFile & { readonly role: 'help' })
  | (VerifyFile & { readonly role: 'lead'; readonly what: VerifyWhat; readonly by: HelpersBy; readonly helpers: number });
export type LeadData = Extract<ThreadData, { role: 'lead' }>;

/** From the one that leads. `cannot-open`: this machine does not let the file be read so. `lost`: a helper was gone before it was done. */
export type LeadMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'done'; readonly verification: Verification }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'cannot-open' }
  | { readonly kind: 'lost'; readonly how: string }
  | { readonly kind: 'fault'; readonly stack: string };

/** To the one that leads, and to its helpers: done with, let go of the file. A thread that holds a connection is never ended from outside: on older Node that ends the program. */
export type EndMessage = { readonly end: true };

/** The first to a helper that is a process. */
export type OpenMessage = { readonly open: VerifyFile };

/** To a helper. */
export type PieceMessage = { readonly job: number; readonly piece: Piece };

/** From a helper; `code` is SQLite's, where it threw. */
export type HelperMessage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'cannot-open' }
  | { readonly kind: 'more'; readonly more: number }
  | { readonly kind: 'found'; readonly job: number; readonly found: Found }
  | { readonly kind: 'failed'; readonly job: number; readonly message: string; readonly code: string };
