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

export function currentTheme(): Theme {
  return stored() ?? (window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light');
}

export function applyTheme(): void {
  document.documentElement.dataset['theme'] = currentTheme();
}

export function setTheme(theme: Theme): void {
  try { localStorage.setItem(KEY, theme); } catch { /* a private window keeps nothing; the choice holds until it closes */ }
  document.documentElement.dataset['theme'] = theme;
  for (const tell of listeners) tell();
}

export function useTheme(): Theme {
  return useSyncExternalStore((tell) => { listeners.add(tell); return () => { listeners.delete(tell); }; }, () => (document.documentElement.dataset['theme'] === 'dark' ? 'dark' : 'light'));
}
