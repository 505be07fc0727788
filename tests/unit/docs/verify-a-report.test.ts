import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { writePublicKeyFile } from '../../../app/signature/public-key-file.ts';
import { hasTool } from '../main/print/outside-tools.ts';
import { RECORDS, sampleKey, signedSample } from '../main/signature/signed-sample.ts';

const page = readFileSync(new URL('../../../docs/verify-a-report.md', import.meta.url), 'utf8');
const recipe = /```sh\n([\s\S]*?)```/.exec(page)![1]!;

/** Runs the recipe of the page as it stands there; gives what it says, or the failure of the first step that does not succeed. */
function follow(pdf: Uint8Array, publicKey: Uint8Array): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-recipe-'));
  try {
    writeFileSync(path.join(folder, 'report.pdf'), pdf);
    writeFileSync(path.join(folder, 'laboratory-key.pem'), writePublicKeyFile({ laboratory: 'Saltmarsh', publicKey, madeAt: '2026-11-25T09:00:00.000Z', invented: true }));
    return execFileSync('sh', ['-e', '-c', recipe], { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  } catch (fault) {
    return `failed: ${String((fault as { stdout?: string }).stdout)}`;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe.skipIf(!hasTool('openssl') || !hasTool('pdfdetach') || process.platform === 'win32')('the recipe with common tools', () => {
  let pdf: Uint8Array;
  beforeAll(async () => { pdf = await signedSample(); });

  test('confirms a report as it was issued', () => {
    const said = follow(pdf, sampleKey());
    expect(said).toContain('Signature Verified Successfully');
    expect(said).toContain('report.json fits');
    expect(said).toContain('the PDF fits');
    expect(said.match(/a raw record fits/g)).toHaveLength(RECORDS.length);
  });

  test('refuses the key of another', () => {
    const said = follow(pdf, sampleKey(4));
    expect(said).toMatch(/^failed/);
    expect(said).not.toContain('the PDF fits');
  });

  test('notices a changed page and an added byte', () => {
    const changed = new Uint8Array(pdf);
    changed[changed.byteLength - 2000]! ^= 1;
    for (const other of [changed, Buffer.concat([pdf, Buffer.from('\n')])]) expect(follow(other, sampleKey())).not.toContain('the PDF fits');
  });
});
