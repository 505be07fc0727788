import { describe, expect, test } from 'vitest';
import { openSealed, sealFor, sealToOf } from '../../../../main/keys/sealed-box.ts';

const mine = new Uint8Array(32).fill(3);
const content = Uint8Array.from({ length: 32 }, (_, i) => i);
const box = sealFor(sealToOf(mine), content, 'key/ada');

describe('a closed copy', () => {
  test('opens for the owner alone', () => {
    expect(openSealed(mine, box, 'key/ada')).toEqual(content);
    expect(openSealed(new Uint8Array(32).fill(4), box, 'key/ada')).toBeNull();
  });
  test('does not open under another name', () => {
    expect(openSealed(mine, box, 'key/ben')).toBeNull();
  });
  test('is another each time', () => {
    expect(sealFor(box.sealedTo, content, 'key/ada').sealed).not.toBe(box.sealed);
  });
  test.each(['sealedTo', 'sender', 'sealed'] as const)('no flipped byte of %s goes unnoticed', (member) => {
    const bytes = Buffer.from(box[member], 'hex');
    for (let at = 0; at < bytes.byteLength; at += 1) {
      const bent = Buffer.from(bytes);
      bent[at]! ^= 0x10;
      expect(openSealed(mine, { ...box, [member]: bent.toString('hex') }, 'key/ada')).toBeNull();
    }
  });
  test('what was taken away or is no box opens for nobody, without a fault', () => {
    for (const sealed of ['', 'zz', '00', 'a'.repeat(96)]) expect(openSealed(mine, { ...box, sealed }, 'key/ada')).toBeNull();
  });
});
