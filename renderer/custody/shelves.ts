import type { Whereabouts } from '../../app/contract/custody.ts';

/** 'all', 'out', 'late', 'nowhere', or "place:" and the place's name. */
export type ShelfId = string;
export type Shelf = { readonly id: ShelfId; readonly name: string; readonly count: number; readonly warn: boolean };

const placeId = (place: string): ShelfId => `place:${place}`;

/** True where an item belongs under this heading. */
export function inShelf(row: Whereabouts, shelf: ShelfId): boolean {
  switch (shelf) {
    case 'all': return true;
    case 'out': return row.out !== null;
    case 'late': return row.out?.overdue === true;
    case 'nowhere': return row.out === null && row.place === '';
    default: return row.out === null && placeId(row.place) === shelf;
  }
}

/** The headings at the left, with how much is under each: empty ones are left out, the house's own places stay. */
export function shelvesOf(rows: readonly Whereabouts[], places: readonly string[]): readonly Shelf[] {
  const counted = (id: ShelfId, name: string, warn = false): Shelf => ({ id, name, count: rows.filter((row) => inShelf(row, id)).length, warn });
  const special = [counted('out', 'out of the house'), counted('late', 'overdue', true), counted('nowhere', 'no place written')].filter((shelf) => shelf.count > 0);
  return [counted('all', 'everything'), ...special, ...places.map((place) => counted(placeId(place), place))];
}

/** True where every word typed stands somewhere in the row. */
export function matchesWords(row: Whereabouts, text: string): boolean {
  const words = text.toLocaleLowerCase('en').split(/\s+/).filter(Boolean);
  const all = [row.caseNumber, row.label, row.declared, row.clientName, row.place, row.seal, row.holder, row.out?.to ?? '', row.out?.purpose ?? ''].join(' ').toLocaleLowerCase('en');
  return words.every((word) => all.includes(word));
}
