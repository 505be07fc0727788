import type { IntakeInput } from '../../../app/contract/cases.ts';

type Item = IntakeInput['parcels'][number]['items'][number];
type Stone = Item['stones'][number];

const stone = (some: Partial<Stone> = {}): Stone => ({ position: '', shape: 'round brilliant', measurements: '', colourClass: 'colourless', weight: null, ...some });
const item = (some: Partial<Item> & Pick<Item, 'kind' | 'declared'>): Item => ({
  declaredValue: '', grossWeight: null, weightUnit: 'ct', count: null, setting: null, condition: '', stones: [], photographs: [], ...some,
});

/** A hand-over with one of each kind: a loose stone, a ring with six stones, a lot. */
export function usualCase(client: string, some: Partial<IntakeInput> = {}): IntakeInput {
  return {
    client: { name: client, address: '12 Orchard Row, Invented Town', email: 'post@invented.example', phone: '+49 30 0000000', note: '' },
    asks: 'Natural or laboratory-grown?', dueOn: null, remarks: '', place: 'safe, tray 2', broughtBy: 'the client',
    parcels: [{
      sealNumber: '20931', remarks: '', items: [
        item({ kind: 'loose', declared: 'diamond, round, about 1 ct, without papers', declaredValue: 'EUR 2,400', grossWeight: 10_234, stones: [stone({ measurements: '6.41 – 6.44 × 3.98', weight: 10_234 })] }),
        item({
          kind: 'jewellery', declared: 'ring, white gold, centre stone and five shoulders', declaredValue: 'EUR 3,100', grossWeight: 421_300, weightUnit: 'g', setting: 'open-back',
          condition: 'light wear at the shank', stones: ['centre', 'left 1', 'left 2', 'right 1', 'right 2', 'right 3'].map((position) => stone({ position, measurements: 'about 2.1' })),
        }),
        item({ kind: 'lot', declared: 'small stones, 0.9 to 1.1 mm, from stock', grossWeight: 17_500, count: 340 }),
      ],
    }],
    ...some,
  };
}

const LONG_WORDS = 'Quillfeather, Harrowgate & Thistledown Consolidated Estate Auctioneers and Jewellery Consignments, Successors to the Old House of Penmarrow & Daughters';

/** Everything as long as the house takes it: names, descriptions, seals, and forty stones in one piece. */
export function longestCase(): IntakeInput {
  return usualCase(LONG_WORDS.slice(0, 150), {
    asks: 'Please state for each stone whether it is natural or laboratory-grown, and name the growth method where the tests show it; the widow needs it before the auction.',
    remarks: 'Long remark. '.repeat(60).trim(), place: 'safe in the back room, lower shelf, third tray from the left, behind the blue box with the estate papers', broughtBy: 'Messrs Wainscot & Wainscot, sworn couriers, by the hand of their second driver',
    parcels: [{
      sealNumber: 'SEAL-2026-0000-1111-2222-3333-4444-5555-6666-7777-8888-99990', remarks: 'the seal was broken on arrival and put on anew in the presence of the courier',
      items: [
        item({ kind: 'jewellery', declared: `necklace, ${'graduated line of round stones with smaller ones between them, '.repeat(8)}`.slice(0, 500), declaredValue: 'EUR 1,234,567.89 as insured, of which half is the clasp', grossWeight: 6_512_345, weightUnit: 'g', setting: 'closed-back',
          condition: 'one prong bent, two stones chipped at the girdle, clasp repaired with another alloy, old glue under the third link', stones: Array.from({ length: 40 }, (_, n) => stone({ position: `row ${Math.floor(n / 8) + 1}, place ${(n % 8) + 1}, beside the engraved link`, shape: 'cushion modified brilliant', measurements: 'about 4.10 × 3.95' })) }),
        item({ kind: 'loose', declared: 'fancy', grossWeight: 1_234_567, stones: [stone({ weight: 1_234_567, colourClass: 'pink-red-purple' })] }),
      ],
    }],
  });
}

/** The same as the intake sheet keeps it while it is typed, with one weight that is none. */
export function longestDraft(): unknown {
  const { client, parcels, dueOn: _dueOn, ...head } = longestCase();
  return {
    ...head, client: { existing: null, ...client }, dueOn: '', lastKey: 1000,
    parcels: parcels.map((parcel, p) => ({
      ...parcel, key: `p${p}`,
      items: parcel.items.map((one, i) => ({
        ...one, key: `i${p}-${i}`, setting: one.setting ?? '', count: '', grossWeight: one.weightUnit === 'g' ? '65,12345' : 'about twelve',
        stones: one.stones.map((part, s) => ({ ...part, key: `s${p}-${i}-${s}`, weight: '' })),
      })),
    })),
  };
}
