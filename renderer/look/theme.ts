import { useSyncExternalStore } from 'react';

export type Theme = 'light' | 'dark';
const KEY = 'culet-theme';
const listeners = new Set<() => void>();

function stored(): Theme | null {
  try {
    const value = localStorage.getItem(KEY);
    return value === 'light' || value === 'dark' ? value : null;
  } catch {
    return null;
  }
}

const system = window.matchMedia('(prefers-color-scheme: dark)');

export function currentTheme(): Theme {
  return stored() ?? (system.matches ? 'dark' : 'light');
}

function show(theme: Theme): void {
  document.documentElement.dataset['theme'] = theme;
  for (const tell of listeners) tell();
}

/** The person's own choice; until there is one, the system's, also when the evening turns it. */
export function applyTheme(): void {
  show(currentTheme());
  system.addEventListener('change', () => { show(currentTheme()); });
}

export function setTheme(theme: Theme): void {
  try { localStorage.setItem(KEY, theme); } catch { /* a private window keeps nothing; the choice holds until it closes */ }
  show(theme);
}

export function useTheme(): Theme {
  return useSyncExternalStore((tell) => { listeners.add(tell); return () => { listeners.delete(tell); }; }, () => (document.documentElement.dataset['theme'] === 'dark' ? 'dark' : 'light'));
}
