import type { Failure } from '../../app/contract/failure.ts';
import type { Permission } from '../../app/contract/operation.ts';
import { ROLE_WORDS, type Role } from '../../app/domain/role.ts';

/** Whether a casebook is open, and who works at the window. */
export type Standing = {
  readonly casebookOpen: boolean;
  readonly person: { readonly name: string; readonly roles: readonly Role[] } | null;
  /** Set where the person is known and the window waits for their password. */
  readonly locked?: boolean;
};

/** Why this window may not call an operation, or null where it may. */
export function refuseByRole(may: Permission, standing: Standing): Failure | null {
  if (may === 'door') return null;
  if (!standing.casebookOpen) {
    return { code: 'no-casebook', message: 'No casebook is open.', next: 'Start your own casebook or open the demonstration casebook first.' };
  }
  const { person } = standing;
  if (person === null) {
    return { code: 'not-allowed', message: 'Nobody has signed in at this window.', next: 'Sign in, then try again.' };
  }
  if (standing.locked === true) return { code: 'locked', message: 'This window is locked.', next: `${person.name} unlocks it with the password, or somebody else signs in.` };
  if (may === 'anyone' || person.roles.some((role) => may.includes(role))) return null;
  return {
    code: 'not-allowed',
    message: `Only ${oneOf(may)} may do this; ${person.name} works here as ${listed(person.roles.map((role) => ROLE_WORDS[role]), 'and')}.`,
    next: `Let ${oneOf(may)} take over at this window, or ask a manager to change the roles.`,
  };
}

function oneOf(roles: readonly Role[]): string {
  return listed(roles.map((role) => withArticle(ROLE_WORDS[role])), 'or');
}

/** "intake" names a desk rather than a person. */
function withArticle(word: string): string {
  if (word === ROLE_WORDS.intake) return 'someone at intake';
  return /^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`;
}

function listed(words: readonly string[], last: 'and' | 'or'): string {
  if (words.length < 2) return words[0] ?? 'nobody in particular';
  return `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]!}`;
}
