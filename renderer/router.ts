import { useSyncExternalStore } from 'react';

/** The views a person can stand in; the address is the hash, so back, forward and reload work in both hosts. */
export type Place =
  | { readonly view: 'bench' | 'cases' | 'stones' | 'custody' | 'reports' | 'instruments' | 'ledgers' | 'house' | 'intake' | 'batch' | 'check' | 'bundles' }
  | { readonly view: 'history'; readonly panel?: string }
  | { readonly view: 'case' | 'report'; readonly id: string }
  /** `panel`: folder of the case that is looked at first. */
  | { readonly view: 'bundle'; readonly id: string; readonly panel?: string }
  | { readonly view: 'stone' | 'lot' | 'piece' | 'pair'; readonly id: string; readonly panel?: string };

const LISTS = ['bench', 'cases', 'stones', 'custody', 'reports', 'instruments', 'ledgers', 'house', 'intake', 'batch', 'check', 'bundles'] as const;

export function parsePlace(hash: string): Place {
  const [view = '', id = '', panel] = hash.replace(/^#\/?/, '').split('/').map(decodeURIComponent);
  if ((view === 'case' || view === 'report') && id) return { view, id };
  if (view === 'bundle' && id) return panel ? { view, id, panel } : { view, id };
  if (view === 'history') return id ? { view, panel: id } : { view };
  if ((view === 'stone' || view === 'lot' || view === 'piece' || view === 'pair') && id) return panel ? { view, id, panel } : { view, id };
  const list = LISTS.find((l) => l === view);
  return { view: list ?? 'bench' };
}

export function placeAddress(place: Place): string {
  if (place.view === 'case' || place.view === 'report') return `#/${place.view}/${encodeURIComponent(place.id)}`;
  if (place.view === 'bundle') return `#/bundle/${place.id}${place.panel ? `/${encodeURIComponent(place.panel)}` : ''}`;
  if (place.view === 'stone' || place.view === 'lot' || place.view === 'piece' || place.view === 'pair') return `#/${place.view}/${encodeURIComponent(place.id)}${place.panel ? `/${place.panel}` : ''}`;
  if (place.view === 'history' && place.panel) return `#/history/${encodeURIComponent(place.panel)}`;
  return `#/${place.view}`;
}

export function go(place: Place): void {
  window.location.hash = placeAddress(place);
}

const listen = (changed: () => void) => {
  window.addEventListener('hashchange', changed);
  return () => { window.removeEventListener('hashchange', changed); };
};

export function usePlace(): Place {
  const hash = useSyncExternalStore(listen, () => window.location.hash);
  return parsePlace(hash);
}
