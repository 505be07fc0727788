import { expect, test } from 'vitest';
import { refuseByRole } from '../../../../main/host/refuse-by-role.ts';

const mara = { casebookOpen: true, person: { name: 'Mara Quill', roles: ['intake', 'examiner'] } } as const;

test('the door is open to all, even before there is a casebook', () => {
  expect(refuseByRole('door', { casebookOpen: false, person: null })).toBeNull();
});

test('anyone means a person with an open casebook', () => {
  expect(refuseByRole('anyone', { casebookOpen: false, person: null })?.code).toBe('no-casebook');
  expect(refuseByRole('anyone', { casebookOpen: true, person: null })?.code).toBe('not-allowed');
  expect(refuseByRole('anyone', mara)).toBeNull();
});

test('one of the roles suffices', () => {
  expect(refuseByRole(['examiner', 'manager'], mara)).toBeNull();
});

test('a refusal names who may and who asked', () => {
  expect(refuseByRole(['manager'], mara)?.message).toBe('Only a manager may do this; Mara Quill works here as intake and examiner.');
  expect(refuseByRole(['intake', 'appraiser', 'manager'], { ...mara, person: { name: 'Jun', roles: [] } })?.message)
    .toBe('Only someone at intake, an appraiser or a manager may do this; Jun works here as nobody in particular.');
});
