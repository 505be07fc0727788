import type { OpenCulet } from '../harness/launch.ts';
import { callDoor } from './call-door.ts';
import { PASSWORD } from './sign-in.ts';

/** An invented laboratory and its first person; the names occur nowhere else. */
export const LABORATORY = { name: 'Tarn Hill Gem Laboratory (invented)', address: '3 Tarn Hill, Invented Town', zone: 'Europe/Berlin', person: 'Ilse Marden' } as const;

/** Far above what a person waits for: a shared machine can be ten times slower than a quiet one. What must be quick is measured where it happens. */
const WAIT_MS = 30_000;

/** Starts a casebook behind the window and waits until the window shows it. */
export async function beginCasebook(culet: Pick<OpenCulet, 'page'>, name: string = LABORATORY.name): Promise<void> {
  culet.page.setDefaultTimeout(WAIT_MS);
  await callDoor(culet, 'casebook.create', {
    name, address: LABORATORY.address, zone: LABORATORY.zone, logo: null,
    person: { name: LABORATORY.person, initials: 'IM', roles: ['intake', 'examiner', 'appraiser', 'manager'], password: PASSWORD },
  });
  await culet.page.getByRole('navigation', { name: 'Rooms' }).waitFor();
}
