import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setImmediate } from 'node:timers/promises';
import v8 from 'node:v8';
import vm from 'node:vm';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { indexDocument, manifestDocument } from '../../../../app/bundle/bundle-documents.ts';
import { BUNDLE_SCHEMAS } from '../../../../app/bundle/json-schemas.ts';
import { judgeBundle } from '../../../../app/bundle/judge-bundle.ts';
import { canonicalJson, type JsonValue } from '../../../../app/custody/canonical-json.ts';
import { sha256Hex } from '../../../../app/custody/chain.ts';
import { err } from '../../../../app/result.ts';
import { fileSink, memorySink } from '../../../../main/bundle/byte-sink.ts';
import { bytesSource } from '../../../../main/bundle/byte-source.ts';
import { casesOfPeriod } from '../../../../main/bundle/cases-of-period.ts';
import { checkBundle } from '../../../../main/bundle/check-bundle.ts';
import { writeBundle } from '../../../../main/bundle/write-bundle.ts';
import { putRawRecord } from '../../../../db/store/put-raw-record.ts';
import { knownFor } from '../../../../main/services/known-for-reports.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import type { TaskPool } from '../../../../main/workers/task-pool.ts';
import { concludeAll } from '../services/conclude-all.ts';
import { openHouse, type House } from '../services/work-house.ts';
import { bundleOf, workOf } from './made-bundle.ts';

/** Three cases on three days, the second without an entry of its own in between; the first has an issued report and two kept files. */
let house: House;
let zip: Uint8Array;
let files: Record<string, Uint8Array>;
const kept = Array.from({ length: 8 }, (_, i) => new Uint8Array(4_000_000).fill(i + 1));

beforeAll(async () => {
  house = await openHouse();
  const first = await house.takeIn();
  await concludeAll(house, Object.values(first.stones));
  await house.done(house.colleague, 'reports.issue', { caseId: first.caseId });
  const other = await house.takeIn();
  await house.casebook.handle.transact((tx) => {
    for (const [i, bytes] of kept.entries()) putRawRecord(tx, { newId: () => `raw-${i}` }, { at: house.now(), personId: house.examiner, operation: 'test' }, { caseId: other.caseId, name: `made ${i}.bin`, mediaType: 'image/x-invented', bytes });
  });
  house.pass(24 * 60);
  await house.takeIn();
  zip = await bundleOf(house);
  files = unzipSync(zip);
}, 60_000);
afterAll(() => { house.close(); });

const json = (name: string): unknown => JSON.parse(Buffer.from(files[name]!).toString('utf8'));
const own = async () => (await knownFor(house.casebook)).keys;

describe('the bundle of a period', () => {
  test('opens with the tools that every machine has', () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'culet-bundle-'));
    const file = path.join(folder, 'bundle.zip');
    writeFileSync(file, zip);
    expect(execFileSync('python3', ['-c', 'import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); print(z.testzip(), len(z.namelist()))', file]).toString().trim()).toBe(`None ${Object.keys(files).length}`);
    if (existsSync('/usr/bin/unzip')) expect(execFileSync('unzip', ['-t', '-q', file]).toString()).toMatch(/No errors/);
    rmSync(folder, { recursive: true });
  });

  test('every document is valid by the schema beside it, as an independent validator reads both', () => {
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    const validators = new Map(Object.keys(BUNDLE_SCHEMAS).map((name) => [name, ajv.compile(json(`schemas/${name}.schema.json`) as object)]));
    const seen = new Set<string>();
    for (const name of Object.keys(files).filter((one) => one.endsWith('.json') && !one.startsWith('schemas/'))) {
      const document = json(name) as { schema: string };
      const validate = validators.get(document.schema)!;
      expect(validate(document), `${name}: ${JSON.stringify(validate.errors?.slice(0, 3))}`).toBe(true);
      expect(validate({ ...document, schema: 'another' })).toBe(false);
      seen.add(document.schema);
    }
    expect([...seen].sort()).toEqual(Object.keys(BUNDLE_SCHEMAS).sort());
  });

  test('lists every file with its size and SHA-256', () => {
    const { files: listed, signed, unsignedBecause } = manifestDocument.parse(json('manifest.json'));
    expect([signed, unsignedBecause]).toEqual([true, '']);
    expect(listed.map(({ path: name }) => name)).toEqual(Object.keys(files).slice(0, -2));
    for (const { path: name, bytes, sha256 } of listed) expect([bytes, sha256]).toEqual([files[name]!.byteLength, createHash('sha256').update(files[name]!).digest('hex')]);
  });

  test('a stranger walks both ledgers from line to line, entries of other cases standing by their digest', () => {
    const index = indexDocument.parse(json('index.json'));
    expect(index.cases.map(({ number, receivedOn }) => [number, receivedOn])).toEqual([['C-2026-0001', '2026-11-25'], ['C-2026-0002', '2026-11-25'], ['C-2026-0003', '2026-11-26']]);
    for (const ledger of ['custody', 'audit'] as const) {
      const chain = new Map(index.ledgers[ledger].files.flatMap((name) => Buffer.from(files[name]!).toString().trim().split('\n')).map((line) => line.split(' ') as [string, string]));
      expect(chain.size).toBe(index.ledgers[ledger].entries);
      expect(chain.get(String(index.ledgers[ledger].head.seq))).toBe(index.ledgers[ledger].head.hash);
      const entries = index.cases.flatMap(({ folder }) => (json(`${folder}/${ledger}.json`) as { entries: { statement: { seq: number; previous: string }; hash: string }[] }).entries);
      expect(entries.length).toBeGreaterThan(10);
      for (const { statement, hash } of entries) {
        expect(sha256Hex(canonicalJson(statement as unknown as JsonValue))).toBe(hash);
        expect(chain.get(String(statement.seq))).toBe(hash);
        if (statement.seq > 1) expect(chain.get(String(statement.seq - 1))).toBe(statement.previous);
      }
    }
  });

  test('is authentic to the house and by an unknown key to a stranger', async () => {
    const check = checkBundle(bytesSource(zip));
    expect(check.faults).toEqual([]);
    expect(judgeBundle(check, await own()).verdict).toBe('authentic');
    expect(judgeBundle(check, []).verdict).toBe('unknown-key');
    expect(judgeBundle(check, (await own()).map((key) => ({ ...key, distrust: 'It was lost.' })))).toMatchObject({ verdict: 'unknown-key', sentence: expect.stringContaining('It was lost.') as string });
    expect(check.summary).toMatchObject({ cases: ['C-2026-0001', 'C-2026-0002', 'C-2026-0003'], reports: 1, rawRecords: 8 });
  });

  test('the same records at the same instant give the same bytes', async () => {
    expect(Buffer.compare(await bundleOf(house), zip)).toBe(0);
  });

  test('with a locked key it says plainly that nobody signed it, and a changed byte is still noticed', async () => {
    const signer = { sign: async () => err({ code: 'locked' as const, message: 'The laboratory’s key is locked.', next: '' }) };
    const unsigned = await bundleOf(house, { signer });
    const inside = unzipSync(unsigned);
    expect(JSON.parse(Buffer.from(inside['manifest.json']!).toString())).toMatchObject({ signed: false, unsignedBecause: 'The laboratory’s key is locked.' });
    expect(Buffer.from(inside['README.txt']!).toString()).toContain('NOT SIGNED');
    expect(judgeBundle(checkBundle(bytesSource(unsigned)), await own())).toMatchObject({ verdict: 'unsigned', faults: [] });
    const seal = Buffer.from(unsigned).lastIndexOf('"exportedAt"');
    for (const at of [seal + 3, seal + 20, unsigned.byteLength - 3]) {
      const altered = unsigned.slice();
      altered[at]! ^= 1;
      expect(judgeBundle(checkBundle(bytesSource(altered)), await own()).verdict, `byte ${at}`).toBe('altered');
    }
  });

  test('never holds more than one record: what was written can be collected before the next is read', async () => {
    v8.setFlagsFromString('--expose-gc');
    const gc = vm.runInNewContext('gc') as () => void;
    const refs: WeakRef<ArrayBufferLike>[] = [];
    let most = 0;
    const inline = createInlinePool();
    const pool: TaskPool = {
      ...inline,
      async run(name, payload, options) {
        const { bytes } = payload as { bytes: Uint8Array };
        if (bytes.byteLength === 4_000_000) {
          await setImmediate();
          gc();
          most = Math.max(most, refs.filter((ref) => ref.deref() !== undefined).length);
          refs.push(new WeakRef(bytes.buffer));
        }
        return inline.run(name, payload, options);
      },
    };
    const cases = await casesOfPeriod(house.casebook, { from: '2026-11-25', to: '2026-11-26' });
    if (!cases.ok) throw new Error('no cases');
    let length = 0;
    const sink = { write: async (bytes: Uint8Array) => { length += bytes.byteLength; }, finish: async () => undefined, discard: async () => undefined };
    const written = await writeBundle({ cases: cases.value, period: null, sink }, { ...workOf(house), pool });
    expect(written.ok && written.value.bytes).toBe(length);
    expect(refs).toHaveLength(8);
    expect(most).toBeLessThanOrEqual(1);
  });
});

test('the recipe in the documentation finds it whole, and finds a changed digest', () => {
  const recipe = /```python\n([\s\S]*?)```/.exec(readFileSync(new URL('../../../../docs/case-bundle.md', import.meta.url), 'utf8'))![1]!;
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-bundle-'));
  writeFileSync(path.join(folder, 'check.py'), recipe);
  writeFileSync(path.join(folder, 'whole.zip'), zip);
  const run = (name: string): string => execFileSync('python3', ['check.py', name], { cwd: folder, stdio: 'pipe' }).toString().trim();
  expect(run('whole.zip')).toBe('everything fits');
  const altered = Buffer.from(zip);
  altered[altered.lastIndexOf('"sha256":"') + 12]! ^= 1;
  writeFileSync(path.join(folder, 'altered.zip'), altered);
  expect(() => run('altered.zip')).toThrow();
  rmSync(folder, { recursive: true });
});

describe('a bundle that does not come about', () => {
  test('is stopped between two cases, and leaves no file', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'culet-bundle-'));
    const stop = new AbortController();
    const cases = await casesOfPeriod(house.casebook, { from: '2026-11-25', to: '2026-11-26' });
    const sink = await fileSink(path.join(folder, 'out.zip'), 'x');
    expect(readdirSync(folder)).toEqual(['out.zip.x.part']);
    const steps: number[] = [];
    const written = await writeBundle({ cases: cases.ok ? cases.value : [], period: null, sink, progress: (done) => { steps.push(done); if (done === 1) stop.abort(); } }, workOf(house, stop.signal));
    expect(written.ok ? null : written.error.code).toBe('cancelled');
    expect(steps).toEqual([0, 1]);
    expect(readdirSync(folder)).toEqual([]);
    rmSync(folder, { recursive: true });
  });

  test('a record that no longer has its digest is not handed on', async () => {
    const spoilt = await openHouse();
    const { caseId: id } = await spoilt.takeIn();
    await spoilt.casebook.handle.transact((tx) => {
      putRawRecord(tx, { newId: () => 'spoilt' }, { at: spoilt.now(), personId: spoilt.examiner, operation: 'test' }, { caseId: id, name: 'a.txt', mediaType: 'text/plain', bytes: new TextEncoder().encode('1 2\n') });
    });
    await spoilt.casebook.handle.transact((tx) => {
      for (const { name } of tx.all<{ name: string }>(`SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'raw_record'`)) tx.run(`DROP TRIGGER "${name}"`);
      tx.run(`UPDATE raw_record SET content = zeroblob(4), packing = 'stored'`);
      tx.written.forget();
    });
    const sink = memorySink();
    const written = await writeBundle({ cases: [{ id, number: 'C-2026-0001', receivedAt: '' }], period: null, sink }, workOf(spoilt));
    expect(written.ok ? null : written.error.code).toBe('unreadable');
    expect(sink.whole().byteLength).toBe(0);
    spoilt.close();
  });
});
