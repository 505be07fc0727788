import type { LaboratoryView } from '../../../../app/contract/casebook.ts';
import type { CaseView, ItemView } from '../../../../app/contract/cases.ts';
import { houseSettings } from '../../../../app/domain/house-settings.ts';

/** Everything here is invented. */
const AT = '2026-11-20T23:30:00.000Z';

export const sampleLaboratory = (changes: Partial<LaboratoryView> = {}): LaboratoryView => ({
  name: 'Saltmarsh Gem Laboratory', address: '4 Tidewater Row\nPort Ansel', zone: 'Europe/Warsaw', isDemonstration: true, logo: null,
  settings: houseSettings.parse({}), createdAt: AT, ...changes,
});

export const sampleItem = (label: string, changes: Partial<ItemView> = {}): ItemView => ({
  id: `item-${label}`, label, kind: 'loose', declared: 'round brilliant, bought as natural', declaredValue: '1 200 EUR', grossWeight: 4120, weightUnit: 'ct', count: null,
  setting: null, condition: 'small chip at the girdle', custody: { place: 'safe 1', holder: 'laboratory', seal: '20931', lastEvent: 'received', at: AT, differs: false, out: null },
  stones: [], photographs: [], ...changes,
});

export function sampleCase(items: readonly ItemView[] = [
  sampleItem('A'),
  sampleItem('B', { kind: 'jewellery', declared: 'bracelet, white gold, eleven stones', grossWeight: 1_432_100, weightUnit: 'g', count: 11, declaredValue: '', condition: '' }),
  sampleItem('C', { kind: 'lot', declared: 'melee, 0.9 to 1.1 mm', grossWeight: 18_000, count: 340 }),
]): CaseView {
  return {
    id: 'case-1', number: 'C-2026-0117',
    client: { id: 'client-1', name: 'Harrow & Pell', address: '11 Chandler’s Court, Port Ansel', email: 'counter@harrow.example', phone: '', note: '', cases: 1 },
    receivedAt: AT, dueOn: '2026-11-27', asks: 'Natural or laboratory-grown?', remarks: 'Client waits for a call before any seal is broken.', state: 'open', createdBy: 'M. Okafor-Lindqvist',
    parcels: [{ id: 'p1', ordinal: 1, sealNumber: '20931', remarks: 'estate parcel', items: items.slice(0, 2) }, { id: 'p2', ordinal: 2, sealNumber: '', remarks: '', items: items.slice(2) }],
    photographs: [],
  };
}
