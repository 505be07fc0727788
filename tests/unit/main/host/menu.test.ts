import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, test } from 'vitest';
import { MENU_COMMANDS, type MenuCommand } from '../../../../app/contract/menu-command.ts';
import { menuTemplate } from '../../../../main/host/menu.ts';

function items(template: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] {
  return template.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? items(item.submenu) : [])]);
}

describe.each([[true], [false]])('the menu (on a Mac: %s)', (isMac) => {
  const sent: MenuCommand[] = [];
  const all = items(menuTemplate({ isMac, developer: false, send: (command) => { sent.push(command); } }));

  test('sends every command, each from one place', () => {
    for (const { click } of all) (click as (() => void) | undefined)?.();
    expect([...sent].sort()).toEqual([...MENU_COMMANDS].sort());
  });

  test('gives no key twice', () => {
    const keys = all.flatMap(({ accelerator }) => (accelerator === undefined ? [] : [accelerator]));
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('can quit, copy and paste, and offers no tools of developers and no reload', () => {
    const roles = all.map(({ role }) => role);
    expect(roles).toEqual(expect.arrayContaining(['quit', 'cut', 'copy', 'paste', 'undo', 'about']));
    for (const role of ['toggleDevTools', 'reload', 'forceReload']) expect(roles).not.toContain(role);
  });
});
