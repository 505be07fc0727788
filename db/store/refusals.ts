import type { Failure } from '../../app/contract/failure.ts';
import { err } from '../../app/result.ts';

type Refusal = { readonly ok: false; readonly error: Failure };

export const notFound = (what: string): Refusal =>
  err({ code: 'not-found', message: `${what} is not in this casebook.`, next: 'Go back to the list; it may have been opened from an old window.' });

export const refused = (message: string, next: string): Refusal => err({ code: 'refused', message, next });

/** Fields whose values do not fit together, each with its sentence. */
export const invalidFields = (fields: Readonly<Record<string, string>>): Refusal =>
  err({ code: 'invalid-input', message: 'Some entries need another look.', next: 'See the sentences beside the fields.', fields: { ...fields } });
