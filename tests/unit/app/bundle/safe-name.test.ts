import { describe, expect, test } from 'vitest';
import { safeName, uniqueNames } from '../../../../app/bundle/safe-name.ts';

describe('names in an archive', () => {
  test.each([
    ['a stone.jdx', 'a stone.jdx'],
    ['../../etc/passwd', '_.._etc_passwd'],
    ['..\\..\\boot.ini', '_.._boot.ini'],
    ['C:\\data\\x.txt', 'C__data_x.txt'],
    ['/absolute', '_absolute'],
    ['.hidden', 'hidden'],
    ['trailing. ', 'trailing'],
    ['...', 'unnamed'],
    ['', 'unnamed'],
    ['con', '_con'],
    ['LPT1.txt', '_LPT1.txt'],
    ['new\nline\u0000nul.dx', 'new_line_nul.dx'],
    ['photo\u202Egpj.exe', 'photo_gpj.exe'],
    ['Prüfung №7.dx', 'Prüfung №7.dx'],
  ])('%j becomes %j', (name, safe) => {
    expect(safeName(name)).toBe(safe);
  });

  test('long names keep their ending and no half of a character', () => {
    const name = safeName(`${'💎'.repeat(200)}.jdx`);
    expect([...name]).toHaveLength(80);
    expect(name.endsWith('.jdx')).toBe(true);
    expect(name.startsWith('💎💎')).toBe(true);
    expect(name).not.toMatch(/[\ud800-\udbff](?![\udc00-\udfff])/);
  });

  test('no two are the same, even where a file system ignores case', () => {
    const once = uniqueNames();
    expect(['raw/a.txt', 'raw/A.TXT', 'raw/a.txt', 'raw/a-2.txt', 'raw/noending', 'raw/noending'].map(once))
      .toEqual(['raw/a.txt', 'raw/A-2.TXT', 'raw/a-3.txt', 'raw/a-2-2.txt', 'raw/noending', 'raw/noending-2']);
  });
});
