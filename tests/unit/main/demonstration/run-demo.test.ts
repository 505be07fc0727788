import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import { openCasebook } from '../../../../db/open-casebook.ts';
import { loadScenario } from '../../../../main/demonstration/load-scenario.ts';
import { readPublicKeyFile } from '../../../../app/signature/public-key-file.ts';
import { checkReport } from '../../../../main/signature/check-report.ts';
import { runDemo, type DemoOptions } from '../../../../main/demonstration/run-demo.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';

const migrations = fileURLToPath(new URL('../../../../db/migrations', import.meta.url));
const now = () => new Date('2026-11-25T09:00:00.000Z');
/** The scenario with its first case alone: a report of three stones. */
const whole = loadScenario();
const scenario = { ...whole, cases: whole.cases.slice(0, 1) };

let out = '';
beforeEach(() => { out = mkdtempSync(path.join(tmpdir(), 'culet-demo-')); });
afterEach(() => { rmSync(out, { recursive: true }); });
const options = (change: Partial<DemoOptions> = {}): DemoOptions => ({ out, migrations, pool: createInlinePool(), now, scenario, ...change });
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A laboratory's own casebook in the place of the demonstration. */
async function ownCasebook(file: string): Promise<void> {
  const made = openCasebook({ file, mustExist: false, migrationsFolder: migrations, now, newId: () => `id-${Math.trunc(performance.now() * 1000)}` });
  if (!made.ok) throw new Error(made.error.message);
  await made.value.laboratory.create(now().toISOString(), { name: 'Own Laboratory', address: '', zone: 'UTC', logo: null, isDemonstration: false, settings: houseSettings.parse({}) }, { name: 'Ada Invented', initials: 'AI', roles: ['manager'] });
  made.value.close();
}

describe('the demonstration without a window', () => {
  test('writes casebook, report, its key and bundle, the same on the same day, and replaces an older demonstration', async () => {
    const made = await runDemo(options());
    if (!made.ok) throw new Error(made.error.message);
    expect(readdirSync(out).sort()).toEqual(['C-2026-0001.zip', 'Demonstration.culet', 'S-2026-0001.pdf', 'laboratory-key.pem']);
    const pdf = readFileSync(made.value.report.file);
    expect([pdf.subarray(0, 5).toString(), sha256(pdf), pdf.length]).toEqual(['%PDF-', made.value.report.sha256, made.value.report.bytes]);
    const check = checkReport(pdf);
    const key = readPublicKeyFile(readFileSync(made.value.key.file, 'utf8'));
    expect(check.kind === 'sound' && key.ok && Buffer.compare(check.signed.publicKey, key.value.publicKey)).toBe(0);
    expect([check.kind === 'sound' && check.signed.statement.demonstration, key.ok && key.value.invented]).toEqual([true, true]);
    const files = unzipSync(readFileSync(made.value.bundle.file));
    expect(sha256(files['cases/C-2026-0001/reports/S-2026-0001.pdf']!)).toBe(made.value.report.sha256);
    expect(JSON.parse(Buffer.from(files['cases/C-2026-0001/case.json']!).toString())).toMatchObject({ demonstration: true });
    const again = await runDemo(options());
    expect(again.ok && again.value.report.sha256).toBe(made.value.report.sha256);
    expect(again.ok && again.value.bundle.sha256).toBe(made.value.bundle.sha256);
  }, 60_000);

  test('never takes the place of a laboratory’s own casebook', async () => {
    const file = path.join(out, 'Demonstration.culet');
    await ownCasebook(file);
    const before = sha256(readFileSync(file));
    const made = await runDemo(options());
    expect(made.ok ? null : [made.error.code, made.error.message.includes('Own Laboratory')]).toEqual(['exists', true]);
    expect(sha256(readFileSync(file))).toBe(before);
    expect(readdirSync(out).filter((name) => /\.(pdf|zip|part)$/.test(name))).toEqual([]);
  });

  test('never takes the place of a file that is no casebook', async () => {
    writeFileSync(path.join(out, 'Demonstration.culet'), 'notes of somebody');
    const made = await runDemo(options());
    expect(made.ok).toBe(false);
    expect(readFileSync(path.join(out, 'Demonstration.culet'), 'utf8')).toBe('notes of somebody');
  });

  test('a folder that can’t be made is a sentence', async () => {
    const file = path.join(out, 'a-file');
    writeFileSync(file, '');
    const made = await runDemo(options({ out: path.join(file, 'below') }));
    expect(made.ok ? null : made.error).toMatchObject({ code: 'cannot-write' });
  });
});
