import { useKey } from '../keys/keymap.ts';

/** What each key of a map does; those that need a mark or an outline do nothing without one. */
export type MapKeys = {
  readonly nudge: (dx: number, dy: number, fine: boolean) => void;
  readonly size: (factor: number) => void;
  readonly next: () => void; readonly remove: () => void; readonly leave: () => void; readonly take: () => void; readonly takeAll: () => void;
  readonly place: () => void; readonly find: () => void; readonly open: () => void; readonly fit: () => void;
  readonly undo: () => void; readonly redo: () => void; readonly save: () => void;
};

const LARGER = 1.1;

/** The keyboard of a map: arrows move (with Shift finely), + and − size, N next, P place, S find outlines, Delete removes, Mod+Z and Mod+Y step back and forward. */
export function useMapKeys(keys: MapKeys, active: boolean): void {
  useKey('ArrowLeft', () => { keys.nudge(-1, 0, false); }, active);
  useKey('ArrowRight', () => { keys.nudge(1, 0, false); }, active);
  useKey('ArrowUp', () => { keys.nudge(0, -1, false); }, active);
  useKey('ArrowDown', () => { keys.nudge(0, 1, false); }, active);
  useKey('Shift+ArrowLeft', () => { keys.nudge(-1, 0, true); }, active);
  useKey('Shift+ArrowRight', () => { keys.nudge(1, 0, true); }, active);
  useKey('Shift+ArrowUp', () => { keys.nudge(0, -1, true); }, active);
  useKey('Shift+ArrowDown', () => { keys.nudge(0, 1, true); }, active);
  useKey('+', () => { keys.size(LARGER); }, active);
  useKey('=', () => { keys.size(LARGER); }, active);
  useKey('-', () => { keys.size(1 / LARGER); }, active);
  useKey('0', keys.fit, active);
  useKey('N', keys.next, active);
  useKey('P', keys.place, active);
  useKey('S', keys.find, active);
  useKey('A', keys.takeAll, active);
  useKey('O', keys.open, active);
  useKey('Enter', keys.take, active);
  useKey('Delete', keys.remove, active);
  useKey('Backspace', keys.remove, active);
  useKey('Escape', keys.leave, active);
  useKey('Mod+Z', keys.undo, active);
  useKey('Mod+Y', keys.redo, active);
  useKey('Mod+S', keys.save, active);
}
