import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { filesOf, FONT_ROLES } from '../../../../main/print/font-files.ts';
import { Sheet } from '../../../../main/print/sheet.ts';
import { woffToSfnt } from '../../../../main/print/woff-to-sfnt.ts';

const sheet = (): Sheet => new Sheet({ pageSize: 'A4', title: 't', author: 'a', subject: 's', language: 'en', createdAt: new Date(0), runningHead: 0, digest: '0'.repeat(64) });

describe('the faces of the printed page', () => {
  test.each(FONT_ROLES)('%s holds every sign that reports use, drawn from a plain sign where the files lack it', (role) => {
    const { fonts } = sheet();
    fonts.shape('ÄÖÜßéèñçłŁőŠžđ–—−·…±×°µ“”‘’§€ ½ cm⁻¹ NV⁰ N₃⁺ SiV⁻ ³²¹ αβγ λ Ωμ Жя №', role);
    expect([...fonts.unprintable]).toEqual([]);
  });

  test('raised signs take less room than the plain ones and keep their meaning', () => {
    const { fonts } = sheet();
    const runs = fonts.shape('cm⁻¹', 'sans');
    expect(runs.map((run) => [run.text, run.means, run.rise])).toEqual([['cm', 'cm', 'base'], ['−1', '⁻¹', 'raised']]);
    expect(fonts.width('⁻¹', 'sans', 10)).toBeLessThan(fonts.width('−1', 'sans', 10));
  });

  test('letters of several scripts come from several files of one face', () => {
    const { fonts } = sheet();
    const runs = fonts.shape('Łódź Ω Ж', 'sans');
    expect(new Set(runs.map((run) => run.key)).size).toBe(4);
    expect(runs.map((run) => run.text).join('')).toBe('Łódź Ω Ж');
    expect(fonts.notice()).toBeNull();
  });

  test('a letter that no file holds is seen, counted once and named', () => {
    const { fonts } = sheet();
    expect(fonts.shape('a宝b宝', 'mono').map((run) => run.text).join('')).toBe('a[?]b[?]');
    expect(fonts.notice()).toContain('U+5B9D.');
  });

  test('mono figures all have the same width', () => {
    const { fonts } = sheet();
    expect(new Set(Array.from('0123456789', (digit) => fonts.width(digit, 'mono', 10))).size).toBe(1);
  });
});

describe('unpacking WOFF', () => {
  const file = readFileSync(filesOf('sans')[0]!.path);

  test('gives each table with its own bytes and the directory that names it', () => {
    const sfnt = woffToSfnt(file);
    const count = file.readUInt16BE(12);
    expect(sfnt.readUInt16BE(4)).toBe(count);
    for (let i = 0; i < count; i += 1) {
      const woffEntry = 44 + i * 20;
      const packed = file.subarray(file.readUInt32BE(woffEntry + 4), file.readUInt32BE(woffEntry + 4) + file.readUInt32BE(woffEntry + 8));
      const length = file.readUInt32BE(woffEntry + 12);
      const expected = packed.length < length ? inflateSync(packed) : packed;
      const entry = 12 + i * 16;
      expect(sfnt.subarray(entry, entry + 4).toString()).toBe(file.subarray(woffEntry, woffEntry + 4).toString());
      const offset = sfnt.readUInt32BE(entry + 8);
      expect(offset % 4).toBe(0);
      expect(sfnt.subarray(offset, offset + sfnt.readUInt32BE(entry + 12)).equals(expected)).toBe(true);
    }
  });

  test('refuses what is not WOFF', () => {
    expect(() => woffToSfnt(Buffer.from('not a font at all, and quite long enough to hold a header of its own'))).toThrow('not a WOFF file');
    expect(() => woffToSfnt(Buffer.alloc(3))).toThrow('not a WOFF file');
  });
});
