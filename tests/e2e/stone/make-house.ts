import type { OpenCulet } from '../harness/launch.ts';
import { callDoor } from '../steps/call-door.ts';
import { addPerson, PASSWORD } from '../steps/sign-in.ts';

type Window = Pick<OpenCulet, 'page'>;

/** A small laboratory, invented for the tests: who works there, what it tests with, and one case. */
export type House = {
  readonly mara: string;
  readonly jonas: string;
  readonly caseId: string;
  /** Stone ids by label. */
  readonly stones: Readonly<Record<string, string>>;
};

const LOOSE = { kind: 'loose' as const, declaredValue: '', grossWeight: 4120, weightUnit: 'ct' as const, count: null, setting: null, condition: '', photographs: [] as never[] };
const STONE = { position: '', measurements: '', colourClass: 'colourless' } as const;

async function addInstruments(culet: Window): Promise<void> {
  const common = { serial: '', place: 'bench 2', checkEveryDays: 30, active: true } as const;
  const spectrometer = await callDoor(culet, 'instruments.save', { id: null, ...common, name: 'Bench spectrometer', methods: ['photoluminescence', 'raman'], remembers: { laserNm: 404.93, temperatureK: 295, integrationMs: 800, resolution: 0.5 } });
  await callDoor(culet, 'instruments.recordCheck', { instrumentId: spectrometer.id, passed: true, reference: 'mercury lamp', outcome: '546.11 nm for 546.07' });
  const infrared = await callDoor(culet, 'instruments.save', { id: null, ...common, name: 'Infrared bench', methods: ['infrared'], remembers: { resolution: 4 } });
  await callDoor(culet, 'instruments.recordCheck', { instrumentId: infrared.id, passed: true, reference: 'polystyrene', outcome: 'within 0.4 cm-1' });
  await callDoor(culet, 'instruments.save', { id: null, ...common, name: 'Old spectrometer', methods: ['photoluminescence'], remembers: {} });
}

/** Starts a casebook at an empty program and takes one case in. */
export async function makeHouse(culet: Window): Promise<House> {
  await callDoor(culet, 'casebook.create', { name: 'Saltmarsh Gem Laboratory (invented)', address: 'Quay 3', zone: 'UTC', logo: null, person: { name: 'Mara Okafor-Lindqvist', initials: 'M.O.-L.', roles: ['manager', 'examiner', 'intake'], password: PASSWORD } });
  const status = await callDoor(culet, 'casebook.status', {});
  const mara = status.people[0]!.id;
  const jonas = await addPerson(culet, { name: 'Jonas Ferrari', initials: 'J.F.', roles: ['second-examiner', 'appraiser'] });
  await addInstruments(culet);
  const { caseId } = await callDoor(culet, 'cases.takeIn', {
    client: { name: 'Harrow & Pell (invented)', address: '', email: '', phone: '', note: '' }, asks: 'natural or laboratory-grown', dueOn: '2027-01-08', remarks: '', place: 'bench 2', broughtBy: '',
    parcels: [
      { sealNumber: '20931', remarks: '', items: [
        ...[1, 2, 3, 4].map((n) => ({ ...LOOSE, declared: `round brilliant ${n} of 4`, stones: [{ ...STONE, shape: 'round', weight: 4120 }] })),
        { ...LOOSE, kind: 'jewellery' as const, declared: 'bracelet with eleven stones', grossWeight: 1_250_000, weightUnit: 'g' as const, setting: 'closed-back' as const, stones: [{ ...STONE, position: 'centre', shape: 'oval', weight: null }, { ...STONE, position: 'links 2 to 11', shape: 'round', colourClass: 'yellow-orange', weight: null }] },
        { ...LOOSE, kind: 'lot' as const, declared: 'small stones 0.9–1.1 mm', grossWeight: 20_000, count: 340, stones: [] },
      ] },
      { sealNumber: '', remarks: '', items: [{ ...LOOSE, declared: 'one loose stone', grossWeight: 10_300, stones: [{ ...STONE, shape: 'cushion', weight: 10_300 }] }] },
    ],
  });
  const view = await callDoor(culet, 'cases.get', { caseId });
  const stones = Object.fromEntries(view.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.stones.map((stone) => [stone.label, stone.id]))));
  return { mara, jonas, caseId, stones };
}
