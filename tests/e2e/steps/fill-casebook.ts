import type { OpenCulet } from '../harness/launch.ts';
import { callDoor } from './call-door.ts';
import { longestCase, usualCase } from './hand-overs.ts';
import { makePng } from './make-png.ts';

export type FilledCasebook = { readonly usual: string; readonly longest: string };

/** A calendar date `days` from today in UTC, yyyy-mm-dd. */
export const dayFromNow = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

async function addInstruments(culet: OpenCulet): Promise<void> {
  const bench = await callDoor(culet, 'instruments.save', {
    id: null, name: 'Bench spectrometer', methods: ['photoluminescence', 'raman'], serial: 'INV-7', place: 'bench 2', remembers: { laserNm: 404.93, temperatureK: 295, xUnit: 'nm' }, checkEveryDays: 30, active: true,
  });
  await callDoor(culet, 'instruments.recordCheck', { instrumentId: bench.id, passed: true, reference: 'mercury lamp', outcome: '546.11 nm for 546.075; residual 0.04 nm' });
  const infrared = await callDoor(culet, 'instruments.save', { id: null, name: 'Infrared', methods: ['infrared'], serial: '', place: 'bench 1', remembers: { resolution: 4 }, checkEveryDays: 7, active: true });
  await callDoor(culet, 'instruments.recordCheck', { instrumentId: infrared.id, passed: false, reference: 'polystyrene film', outcome: '1601.9 cm⁻¹ for 1601.2, more than allowed' });
  await callDoor(culet, 'instruments.save', { id: null, name: 'Long-wave lamp of the dark cabinet at the window, with the spare tube that was put in last winter', methods: ['fluorescence-long-wave'], serial: 'serial-0123456789-0123456789-0123456789-0123456789-0123456789', place: 'bench 3', remembers: {}, checkEveryDays: 365, active: true });
}

/** Cases, instruments and people enough to see every list at work, among them the longest words the house takes. */
export async function fillCasebook(culet: OpenCulet): Promise<FilledCasebook> {
  const taken = await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers', { dueOn: dayFromNow(2) }));
  const long = await callDoor(culet, 'cases.takeIn', { ...longestCase(), dueOn: dayFromNow(20) });
  await callDoor(culet, 'cases.takeIn', usualCase('Private client', { dueOn: dayFromNow(0), parcels: [{ ...usualCase('').parcels[0]!, sealNumber: '' }] }));
  await addInstruments(culet);
  await callDoor(culet, 'people.save', { id: null, name: 'Aurelio Constantin van der Merwe-Lindqvist of the evening bench', initials: 'ACVML', roles: ['second-examiner', 'appraiser'], active: true });
  const view = await callDoor(culet, 'cases.get', { caseId: taken.caseId });
  const loose = view.parcels[0]!.items[0]!;
  const picture = { name: 'long-wave.png', mediaType: 'image/png' as const, caption: 'long-wave, 2 s, f/4', light: 'long-wave' as const };
  await callDoor(culet, 'photographs.add', { caseId: taken.caseId, itemId: loose.id, stoneId: null, bytes: makePng(320, 240), ...picture });
  await callDoor(culet, 'custody.append', { itemId: loose.id, event: 'opened', seal: '20931', note: 'for testing' });
  await callDoor(culet, 'custody.append', { itemId: loose.id, event: 'weighed', weight: 10_190, note: 'balance 1' });
  await callDoor(culet, 'custody.append', { itemId: loose.id, event: 'handed-over', from: 'the laboratory', to: 'courier Wainscot', place: 'on the road to the second laboratory' });
  return { usual: taken.caseId, longest: long.caseId };
}
