import type { PictureKind } from '../../app/custody/check-picture.ts';
import type { ColourClass } from '../../app/domain/colour-class.ts';

/** The form as typed: text stays text until it is taken in, so nothing a person wrote is bent on the way. */
export type StoneForm = { readonly key: string; readonly position: string; readonly shape: string; readonly measurements: string; readonly colourClass: ColourClass; readonly weight: string };
export type Light = 'white' | 'long-wave' | 'short-wave' | 'polarised';
export type PhotoForm = { readonly key: string; readonly name: string; readonly mediaType: PictureKind; readonly bytes: Uint8Array; readonly caption: string; readonly light: Light };
export type ItemKind = 'loose' | 'jewellery' | 'lot';
export type ItemForm = {
  readonly key: string; readonly kind: ItemKind; readonly declared: string; readonly declaredValue: string; readonly grossWeight: string;
  readonly weightUnit: 'ct' | 'g'; readonly count: string; readonly setting: 'open-back' | 'closed-back' | ''; readonly condition: string;
  readonly stones: readonly StoneForm[]; readonly photographs: readonly PhotoForm[];
};
export type ParcelForm = { readonly key: string; readonly sealNumber: string; readonly remarks: string; readonly items: readonly ItemForm[] };
export type ClientForm = { readonly existing: string | null; readonly name: string; readonly address: string; readonly email: string; readonly phone: string; readonly note: string };
export type IntakeForm = {
  readonly client: ClientForm; readonly asks: string; readonly dueOn: string; readonly remarks: string; readonly place: string; readonly broughtBy: string;
  readonly parcels: readonly ParcelForm[];
  /** Last number used for a key, so that keys stay unique without a clock or chance. */
  readonly lastKey: number;
};

// Colour class and setting decide which rules and tests apply: nobody but a person who looked may say them.
const newStone = (key: string): StoneForm => ({ key, position: '', shape: '', measurements: '', colourClass: 'unknown', weight: '' });

function newItem(kind: ItemKind, key: number): ItemForm {
  return {
    key: `i${key}`, kind, declared: '', declaredValue: '', grossWeight: '', weightUnit: kind === 'jewellery' ? 'g' : 'ct', count: '',
    setting: '', condition: '', stones: kind === 'lot' ? [] : [newStone(`s${key}`)], photographs: [],
  };
}

export const EMPTY_CLIENT: ClientForm = { existing: null, name: '', address: '', email: '', phone: '', note: '' };

export function emptyIntake(place = ''): IntakeForm {
  return {
    client: EMPTY_CLIENT, asks: 'Natural or laboratory-grown?', dueOn: '', remarks: '', place, broughtBy: '',
    parcels: [{ key: 'p1', sealNumber: '', remarks: '', items: [newItem('loose', 2)] }], lastKey: 2,
  };
}

export type IntakeChange =
  | { readonly do: 'set'; readonly field: 'asks' | 'dueOn' | 'remarks' | 'place' | 'broughtBy'; readonly value: string }
  | { readonly do: 'client'; readonly client: ClientForm }
  | { readonly do: 'parcel'; readonly parcel: number; readonly value: Partial<Pick<ParcelForm, 'sealNumber' | 'remarks'>> }
  | { readonly do: 'item'; readonly parcel: number; readonly item: number; readonly value: Partial<ItemForm> }
  | { readonly do: 'stone'; readonly parcel: number; readonly item: number; readonly stone: number; readonly value: Partial<StoneForm> }
  | { readonly do: 'add-parcel' }
  | { readonly do: 'add-item'; readonly parcel: number; readonly kind: ItemKind }
  | { readonly do: 'add-stones'; readonly parcel: number; readonly item: number; readonly many: number }
  | { readonly do: 'add-photographs'; readonly parcel: number; readonly item: number; readonly photographs: readonly Omit<PhotoForm, 'key'>[] }
  | { readonly do: 'remove-parcel'; readonly parcel: number }
  | { readonly do: 'remove-item'; readonly parcel: number; readonly item: number }
  | { readonly do: 'remove-stone'; readonly parcel: number; readonly item: number; readonly stone: number }
  | { readonly do: 'remove-photograph'; readonly parcel: number; readonly item: number; readonly photograph: number }
  | { readonly do: 'all'; readonly form: IntakeForm };

const replaceAt = <T>(list: readonly T[], at: number, change: (value: T) => T): readonly T[] => list.map((value, i) => (i === at ? change(value) : value));
const without = <T>(list: readonly T[], at: number): readonly T[] => list.filter((_, i) => i !== at);

const inParcel = (form: IntakeForm, parcel: number, change: (value: ParcelForm) => ParcelForm): IntakeForm => ({ ...form, parcels: replaceAt(form.parcels, parcel, change) });
const inItem = (form: IntakeForm, parcel: number, item: number, change: (value: ItemForm) => ItemForm): IntakeForm =>
  inParcel(form, parcel, (p) => ({ ...p, items: replaceAt(p.items, item, change) }));

/** One step of filling in the form; the same step on the same form gives the same form. */
export function changeIntake(form: IntakeForm, change: IntakeChange): IntakeForm {
  switch (change.do) {
    case 'all': return change.form;
    case 'set': return { ...form, [change.field]: change.value };
    case 'client': return { ...form, client: change.client };
    case 'parcel': return inParcel(form, change.parcel, (p) => ({ ...p, ...change.value }));
    case 'item': return inItem(form, change.parcel, change.item, (i) => ({ ...i, ...change.value }));
    case 'stone': return inItem(form, change.parcel, change.item, (i) => ({ ...i, stones: replaceAt(i.stones, change.stone, (s) => ({ ...s, ...change.value })) }));
    case 'add-parcel': return {
      ...form, lastKey: form.lastKey + 2,
      parcels: [...form.parcels, { key: `p${form.lastKey + 1}`, sealNumber: '', remarks: '', items: [newItem('loose', form.lastKey + 2)] }],
    };
    case 'add-item': return { ...inParcel(form, change.parcel, (p) => ({ ...p, items: [...p.items, newItem(change.kind, form.lastKey + 1)] })), lastKey: form.lastKey + 1 };
    case 'add-stones': {
      const more = Array.from({ length: change.many }, (_, n) => newStone(`s${form.lastKey + 1 + n}`));
      return { ...inItem(form, change.parcel, change.item, (i) => ({ ...i, stones: [...i.stones, ...more] })), lastKey: form.lastKey + change.many };
    }
    case 'add-photographs': {
      const more = change.photographs.map((p, n) => ({ ...p, key: `f${form.lastKey + 1 + n}` }));
      return { ...inItem(form, change.parcel, change.item, (i) => ({ ...i, photographs: [...i.photographs, ...more] })), lastKey: form.lastKey + more.length };
    }
    case 'remove-parcel': return form.parcels.length > 1 ? { ...form, parcels: without(form.parcels, change.parcel) } : form;
    case 'remove-item': return inParcel(form, change.parcel, (p) => (p.items.length > 1 ? { ...p, items: without(p.items, change.item) } : p));
    case 'remove-stone': return inItem(form, change.parcel, change.item, (i) => ({ ...i, stones: without(i.stones, change.stone) }));
    case 'remove-photograph': return inItem(form, change.parcel, change.item, (i) => ({ ...i, photographs: without(i.photographs, change.photograph) }));
  }
}

/** True where a person has written anything worth keeping. */
export function hasContent(form: IntakeForm): boolean {
  const { parcels: _parcels, lastKey: _key, ...head } = form;
  const { parcels: _p, lastKey: _k, ...emptyHead } = emptyIntake(form.place);
  if (JSON.stringify(head) !== JSON.stringify(emptyHead)) return true;
  return form.parcels.length > 1 || form.parcels.some((p) => p.sealNumber !== '' || p.remarks !== '' || p.items.length > 1
    || p.items.some((i) => i.declared !== '' || i.declaredValue !== '' || i.grossWeight !== '' || i.count !== '' || i.condition !== '' || i.photographs.length > 0
      || i.stones.some((s) => s.position !== '' || s.shape !== '' || s.measurements !== '' || s.weight !== '')));
}
