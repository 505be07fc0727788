import type { z } from 'zod';
import type { Failure } from '../../app/contract/failure.ts';

type Issue = z.core.$ZodIssue;

/** Sentences for the checks that the contract gives no sentence of its own. Handed to zod at each parse; the contract's own words win. */
export const plainSentence: z.core.$ZodErrorMap = (issue) => {
  switch (issue.code) {
    case 'invalid_type': return issue.input === undefined || issue.input === null ? 'This is missing.' : `This must be ${inWords(issue.expected)}.`;
    case 'invalid_value': return `This must be one of: ${issue.values.map(String).join(', ')}.`;
    case 'too_small': return `This must be at least ${String(issue.minimum)}${ofWhat(issue.origin)}.`;
    case 'too_big': return `This must be at most ${String(issue.maximum)}${ofWhat(issue.origin)}.`;
    case 'unrecognized_keys': return `Culet does not know ${issue.keys.join(', ')} here.`;
    case 'invalid_union': return 'This fits none of the forms it may have.';
    default: return 'This does not have the form it must have.';
  }
};

/** The failure that goes with an input the contract refuses: one sentence for each wrong field, by its path joined with dots. */
export function describeInputErrors(issues: readonly Issue[]): Failure {
  const fields: Record<string, string> = {};
  for (const { path, message } of issues.flatMap((issue) => leaves(issue, []))) {
    const key = path.map(String).join('.');
    if (!Object.hasOwn(fields, key)) fields[key] = message;
  }
  const sentences = Object.values(fields);
  return {
    code: 'invalid-input',
    message: sentences.length === 1 ? sentences[0]! : `${sentences.length} entries are not right yet.`,
    next: 'Correct what is marked and try again.',
    fields,
  };
}

type Leaf = { readonly path: readonly PropertyKey[]; readonly message: string };

/** For a choice of forms: the complaints of the form that the input comes closest to. */
function leaves(issue: Issue, above: readonly PropertyKey[]): Leaf[] {
  const path = [...above, ...issue.path];
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [{ path, message: issue.message }];
  const closest = issue.errors.reduce((best, form) => (distance(form) < distance(best) ? form : best));
  return closest.flatMap((inner) => leaves(inner, path));
}

/** Fields that the form does not know tell most, missing fields next: the input was meant for another form. */
function distance(form: readonly Issue[]): number {
  return form.reduce((sum, issue) => sum + (issue.code === 'unrecognized_keys' ? 10 * issue.keys.length : issue.code === 'invalid_type' ? 3 : 1), 0);
}

function inWords(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    string: 'text', number: 'a number', int: 'a whole number', boolean: 'yes or no', array: 'a list', object: 'a group of fields', record: 'a group of fields',
  };
  return words[expected] ?? `of the kind “${expected}”`;
}

function ofWhat(origin: string): string {
  if (origin === 'string') return ' characters long';
  return origin === 'array' ? ' entries long' : '';
}
