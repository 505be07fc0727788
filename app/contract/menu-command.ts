/**
 * What the native menu asks of the window, as the `command` of a menu event; 'go:NAME' opens the room of that name.
 * A host without a menu never sends one: each has its key in the window too.
 */
export const MENU_COMMANDS = [
  'new-case', 'find', 'go:bench', 'go:cases', 'go:stones', 'go:custody', 'go:reports', 'go:instruments', 'go:history', 'go:ledgers', 'go:house',
] as const;
export type MenuCommand = (typeof MENU_COMMANDS)[number];
