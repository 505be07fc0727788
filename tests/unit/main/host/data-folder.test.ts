import { describe, expect, test } from 'vitest';
import { dataFolder } from '../../../../main/host/data-folder.ts';
import { statedValue } from '../../../../main/host/stated-value.ts';

const linux = { platform: 'linux', env: {}, home: '/home/mara' } as const;

describe('dataFolder', () => {
  test('what is stated comes first, relative to where the person is', () => {
    expect(dataFolder('books', { ...linux, env: { CULET_DATA: '/elsewhere' } }, '/work')).toBe('/work/books');
  });
  test('then the environment, then the platform’s place', () => {
    expect(dataFolder(undefined, { ...linux, env: { CULET_DATA: '/elsewhere' } }, '/work')).toBe('/elsewhere');
    expect(dataFolder('', linux, '/work')).toBe('/home/mara/.config/Culet');
    expect(dataFolder(undefined, { ...linux, env: { XDG_CONFIG_HOME: '/conf' } }, '/work')).toBe('/conf/Culet');
    expect(dataFolder(undefined, { ...linux, platform: 'darwin' }, '/work')).toBe('/home/mara/Library/Application Support/Culet');
  });
});

test.each([
  [['--data=/a'], '/a'], [['.', '--data', '/a'], '/a'], [['--data', '--port'], undefined], [['--data='], undefined], [['--database=/a'], undefined], [[], undefined],
] as const)('of %j the data folder is %j', (args, expected) => { expect(statedValue(args, 'data')).toBe(expected); });
