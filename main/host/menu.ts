import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../../app/contract/menu-command.ts';

export type MenuFacts = { readonly isMac: boolean; readonly developer: boolean; send(command: MenuCommand): void };

/** The native menu. What concerns the work is sent to the window as a command; the rest are the platform's own entries. */
export function menuTemplate({ isMac, developer, send }: MenuFacts): MenuItemConstructorOptions[] {
  const item = (label: string, command: MenuCommand, accelerator?: string): MenuItemConstructorOptions =>
    ({ label, click: () => { send(command); }, ...(accelerator === undefined ? {} : { accelerator }) });
  const separator: MenuItemConstructorOptions = { type: 'separator' };
  const about: MenuItemConstructorOptions = { role: 'about', label: 'About Culet' };
  const house = item('House and settings', 'go:house', 'CmdOrCtrl+,');
  const quit: MenuItemConstructorOptions = { role: 'quit', label: 'Quit Culet', accelerator: 'CmdOrCtrl+Q' };

  const macProgram: MenuItemConstructorOptions = {
    label: 'Culet', submenu: [about, separator, house, separator, { role: 'hide' }, { role: 'hideOthers' }, { role: 'unhide' }, separator, quit],
  };
  const file: MenuItemConstructorOptions = {
    label: '&File',
    submenu: [item('New case', 'new-case', 'CmdOrCtrl+N'), item('Find…', 'find', 'CmdOrCtrl+K'), separator, ...(isMac ? [{ role: 'close' } as const] : [quit])],
  };
  const edit: MenuItemConstructorOptions = {
    label: '&Edit',
    submenu: [{ role: 'undo' }, { role: 'redo' }, separator, { role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
  };
  const go: MenuItemConstructorOptions = {
    label: '&Go',
    submenu: [
      item('Bench', 'go:bench', 'CmdOrCtrl+1'), item('Cases', 'go:cases', 'CmdOrCtrl+2'), item('Stones', 'go:stones', 'CmdOrCtrl+3'),
      item('Custody', 'go:custody', 'CmdOrCtrl+4'), item('Reports', 'go:reports', 'CmdOrCtrl+5'), item('Instruments', 'go:instruments', 'CmdOrCtrl+6'),
      item('Ledgers', 'go:ledgers', 'CmdOrCtrl+7'), item('History', 'go:history', 'CmdOrCtrl+8'),
      ...(isMac ? [] : [house]),
    ],
  };
  const view: MenuItemConstructorOptions = {
    label: '&View',
    submenu: [
      { role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, separator, { role: 'togglefullscreen' },
      ...(developer ? [separator, { role: 'toggleDevTools' } as const] : []),
    ],
  };
  const help: MenuItemConstructorOptions = { label: '&Help', submenu: [about] };
  return [...(isMac ? [macProgram] : []), file, edit, go, view, ...(isMac ? [] : [help])];
}
