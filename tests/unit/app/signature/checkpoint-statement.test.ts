import { expect, test } from 'vitest';
import { readCheckpointFile, signedOf, writeCheckpointFile, type CheckpointStatement } from '../../../../app/signature/checkpoint-statement.ts';
import { statementBytes } from '../../../../app/signature/signed-statement.ts';
import { publicKeyOf, signWith } from '../../../../main/keys/ed25519.ts';

const seed = new Uint8Array(32).fill(5);
const statement: CheckpointStatement = {
  statement: 'culet-checkpoint-1', laboratory: 'Invented Laboratory', begun: '2026-03-02T09:00:00.000Z', at: '2026-11-25T09:00:00.000Z', why: 'asked',
  audit: { seq: 12, hash: 'a'.repeat(64) }, custody: { seq: 0, hash: '0'.repeat(64) },
};
const text = writeCheckpointFile(signedOf(statement, { publicKey: publicKeyOf(seed), signature: signWith(seed, statementBytes(statement)) }));

test('a checkpoint file is read back as it was written', () => {
  expect(readCheckpointFile(text)).toMatchObject({ ok: true, value: { statement } });
});

test('no changed character goes unnoticed', () => {
  for (let at = 0; at < text.trimEnd().length; at += 1) {
    const bent = text.slice(0, at) + (text[at] === '0' ? '1' : '0') + text.slice(at + 1);
    expect(readCheckpointFile(bent).ok, text.slice(Math.max(0, at - 10), at + 10)).toBe(false);
  }
});

test('what is none is refused in a sentence', () => {
  for (const other of ['', 'nothing', '{}', '[]']) expect(readCheckpointFile(other)).toEqual({ ok: false, error: expect.stringContaining('no checkpoint') as string });
});
