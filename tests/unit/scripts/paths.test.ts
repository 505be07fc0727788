import { afterEach, expect, test, vi } from 'vitest';
import { callersFolder, projectNode, root, toolEnvironment } from '../../../scripts/lib/paths.mjs';

afterEach(() => { vi.unstubAllEnvs(); vi.restoreAllMocks(); });

test('file names mean the folder a person stood in when npm ran the command', () => {
  vi.spyOn(process, 'cwd').mockReturnValue(root);
  vi.stubEnv('npm_lifecycle_event', 'culet');
  vi.stubEnv('INIT_CWD', '/somewhere');
  expect(callersFolder()).toBe('/somewhere');
});

test.each([
  ['the command was not started through npm', undefined, root],
  ['npm runs something else, of which the command is a part', 'test', root],
  ['the command was started in another folder', 'culet', '/another'],
])('they mean the present folder when %s', (_case, event, cwd) => {
  vi.spyOn(process, 'cwd').mockReturnValue(cwd);
  vi.stubEnv('npm_lifecycle_event', event);
  vi.stubEnv('INIT_CWD', '/somewhere');
  expect(callersFolder()).toBe(cwd);
});

test('tools find the project\'s own Node first, and it can load the database', () => {
  const path = Object.entries(toolEnvironment()).find(([name]) => name.toUpperCase() === 'PATH')?.[1] ?? '';
  expect(path.startsWith(root)).toBe(true);
  expect(projectNode()).not.toBeNull();
  expect(Number(process.versions.node.split('.')[0])).toBeGreaterThanOrEqual(22);
});
