import type { Failure } from '../../app/contract/failure.ts';
import { err } from '../../app/result.ts';

type Refusal = { readonly ok: false; readonly error: Failure };

export const notFound = (what: string): Refusal =>
  err({ code: 'not-found', message: `${what} is not in this casebook.`, next: 'Go back to the list; it may have been opened from an old window.' });

export const refused = (message: string, next: string): Refusal => err({ code: 'refused', message, next });

export const conflict = (message: string, next: string): Refusal => err({ code: 'conflict', message, next });

export const noCasebook = (): Refusal =>
  err({ code: 'no-casebook', message: 'No casebook is open.', next: 'Start your own casebook or open the demonstration casebook first.' });
