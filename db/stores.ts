import type { StoreHandle } from './handle.ts';

export type StoreDeps = { readonly now: () => Date; readonly newId: () => string };

/** Every store of a casebook that is about what was taken in. */
export type Stores = Readonly<Record<never, never>>;

export function createStores(_handle: StoreHandle, _deps: StoreDeps): Stores {
  return {};
}
