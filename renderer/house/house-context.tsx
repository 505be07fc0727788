import { createContext, useContext } from 'react';
import type { LaboratoryView, PersonView } from '../../app/contract/casebook.ts';
import type { Output } from '../../app/contract/index.ts';

export type House = {
  readonly laboratory: LaboratoryView;
  readonly people: readonly PersonView[];
  readonly me: PersonView | null;
  readonly status: Output<'casebook.status'>;
};

export const HouseContext = createContext<House | null>(null);

/** The open casebook: laboratory, people, who works at this window. Only below the start screen. */
export function useHouse(): House {
  const house = useContext(HouseContext);
  if (!house) throw new Error('useHouse outside an open casebook');
  return house;
}
