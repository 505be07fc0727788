import { copyFileSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bytesSource } from '../../../../main/bundle/byte-source.ts';
import { digestOf } from '../../../../main/bundle/digest-of.ts';
import { EXAMINER, foundedHouse, MANAGER, reopened } from './founded-house.ts';
import { runCaptured } from './run-captured.ts';

/** Two laboratories with passwords: one writes a bundle, the other takes it in, both on the command line. */
let sender = { file: '', folder: '' };
let receiver = { file: '', folder: '' };
const never = () => new Promise<void>(() => undefined);
const zip = () => path.join(sender.folder, 'case.zip');
const secret = (text: string) => new TextEncoder().encode(text);

beforeAll(async () => {
  sender = await foundedHouse('Sending Laboratory');
  receiver = await foundedHouse('Receiving Laboratory');
}, 240_000);
afterAll(() => { for (const { folder } of [sender, receiver]) rmSync(folder, { recursive: true, force: true }); });

const culet = (args: readonly string[], options: Parameters<typeof runCaptured>[1] = {}) => runCaptured(args, { workingFolder: sender.folder, askedToEnd: never, ...options });
const bundle = (args: readonly string[], options?: Parameters<typeof runCaptured>[1], out = 'case.zip') => culet(['bundle', `C-${new Date().getUTCFullYear()}-0001`, '--out', out, '--casebook', sender.file, ...args], options);
const take = (args: readonly string[], options?: Parameters<typeof runCaptured>[1]) => culet(['import', 'case.zip', '--casebook', receiver.file, ...args], options);
const as = ({ name }: { name: string }) => ['--person', name];

const inLedger = async (file: string) => {
  const casebook = reopened(file);
  const rows = (await casebook.audit.list({ caseId: null, limit: 20, offset: 0 })).rows.map(({ operation, person: by, content }) => ({ operation, by, content }));
  casebook.close();
  return rows;
};

describe('bundle, signed', () => {
  test('without a person it says that it is not signed, and what would sign it', async () => {
    const { code, err } = await bundle([]);
    expect([code, err]).toEqual([0, 'It is not signed: the laboratory’s key is locked. Whoever may sign is named with --person and gives the password; it is then signed.\n']);
    expect((await culet(['verify', 'case.zip'])).code).toBe(4);
  });

  test('with the password on standard input it is signed, and signing in is written down', async () => {
    const { code, out, err } = await bundle([...as(MANAGER), '--password-stdin', '--json'], { stdin: secret(`${MANAGER.password}\nmore that is not read`) });
    expect([code, err, JSON.parse(out)]).toMatchObject([0, '', { ok: true, signed: true }]);
    const verified = await culet(['verify', 'case.zip', '--casebook', sender.file, '--json']);
    expect([verified.code, JSON.parse(verified.out)]).toMatchObject([0, { verdict: 'authentic' }]);
    const rows = await inLedger(sender.file);
    expect(rows.some(({ operation, by, content }) => operation === 'people.signIn' && by === MANAGER.name && content.includes('signed in on the command line to sign a bundle'))).toBe(true);
    // The key was open: how far the ledgers had come is signed too.
    expect(rows[0]!.operation).toBe('checkpoints.make');
    expect(JSON.stringify(rows)).not.toContain(MANAGER.password);
  });

  test('asked for at a terminal it is asked on standard error, and what is typed shows nowhere', async () => {
    const { code, out, err } = await bundle(as(MANAGER), { typed: MANAGER.password });
    expect([code, err]).toEqual([0, 'Password of Ada Invented: ']);
    expect(out + err).not.toContain(MANAGER.password);
  });

  test.each<[string, () => ReturnType<typeof bundle>, number, string]>([
    ['a wrong password', () => bundle([...as(MANAGER), '--password-stdin', '--json'], { stdin: secret('another phrase') }, 'none.zip'), 1, 'refused'],
    ['nobody of that name', () => bundle(['--person', 'Nobody', '--password-stdin', '--json'], { stdin: secret(MANAGER.password) }, 'none.zip'), 1, 'refused'],
    ['one who may not sign', () => bundle([...as(EXAMINER), '--json'], { typed: EXAMINER.password }, 'none.zip'), 1, 'not-allowed'],
    ['no way to give the password', () => bundle([...as(MANAGER), '--json'], {}, 'none.zip'), 1, 'no-password'],
    ['a person who stops', () => bundle([...as(MANAGER), '--json'], { typed: null }, 'none.zip'), 1, 'no-password'],
    ['a password of nobody', () => bundle(['--password-stdin', '--json'], { stdin: secret('x') }, 'none.zip'), 2, 'usage'],
  ])('%s: nothing is written', async (_what, run, exit, errorCode) => {
    const { code, out } = await run();
    expect([code, JSON.parse(out)]).toMatchObject([exit, { ok: false, error: { code: errorCode } }]);
    expect(existsSync(path.join(sender.folder, 'none.zip'))).toBe(false);
  });

  test('wrong attempts are written down and make the next one wait', async () => {
    const copy = path.join(sender.folder, 'Copy.culet');
    copyFileSync(sender.file, copy);
    const attempt = (phrase: string) => culet(['bundle', copy, '--from', '2020-01-01', '--to', '2099-12-31', '--out', 'copy.zip', ...as(MANAGER), '--json'], { typed: phrase });
    let last = '';
    for (let i = 0; i < 8 && last !== 'busy'; i++) last = (JSON.parse((await attempt('not this')).out) as { error: { code: string } }).error.code;
    expect(last).toBe('busy');
    expect(JSON.parse((await attempt(MANAGER.password)).out)).toMatchObject({ error: { code: 'busy', next: expect.stringContaining('seconds') as string } });
    expect((await inLedger(copy)).some(({ content }) => content.includes('wrong password'))).toBe(true);
  });
});

describe('import', () => {
  test.each<[string, readonly string[], Parameters<typeof runCaptured>[1], number, string]>([
    ['no person', ['--json'], { typed: MANAGER.password }, 2, 'usage'],
    ['a wrong password', [...as(MANAGER), '--json'], { typed: 'no' }, 1, 'refused'],
    ['one who is no manager', [...as(EXAMINER), '--json'], { typed: EXAMINER.password }, 1, 'not-allowed'],
    ['a key that nobody knows', [...as(MANAGER), '--json'], { typed: MANAGER.password }, 3, 'invalid-input'],
  ])('%s: nothing is taken in', async (_what, args, options, exit, errorCode) => {
    const { code, out } = await take(args, options);
    expect([code, JSON.parse(out)]).toMatchObject([exit, { ok: false, error: { code: errorCode } }]);
    if (exit === 3) expect(out).toMatch(/([0-9a-f]{4} ){15}[0-9a-f]{4}[^]*--checked-how/);
    expect(reopenedCount(receiver.file)).toEqual([0, 0]);
  });

  test('one that was altered is refused before anybody signs in', async () => {
    const bytes = readFileSync(zip());
    bytes[bytes.length >> 1]! ^= 4;
    writeFileSync(path.join(sender.folder, 'altered.zip'), bytes);
    const { code, out, err } = await culet(['import', 'altered.zip', '--casebook', receiver.file, ...as(MANAGER), '--json'], { typed: MANAGER.password });
    expect([code, JSON.parse(out), err]).toMatchObject([1, { error: { code: 'altered' } }, '']);
    writeFileSync(path.join(sender.folder, 'letter.zip'), 'no zip');
    expect((await culet(['import', 'letter.zip', '--casebook', receiver.file, ...as(MANAGER)], { typed: MANAGER.password })).code).toBe(4);
  });

  test('the laboratory’s own bundle is refused', async () => {
    const { code, err } = await culet(['import', 'case.zip', '--casebook', sender.file, ...as(MANAGER)], { typed: MANAGER.password });
    expect([code, err.includes('a bundle of this laboratory itself')]).toEqual([1, true]);
  });

  test('a casebook that the program has open is left alone, and said what to do', async () => {
    const open = reopened(receiver.file);
    const { code, out } = await take([...as(MANAGER), '--checked-how', 'by telephone', '--json'], { typed: MANAGER.password });
    open.close();
    expect([code, JSON.parse(out)]).toMatchObject([1, { error: { code: 'in-use', next: expect.stringContaining('in the window') as string } }]);
  });

  test('one that was stopped leaves nothing', async () => {
    const { code, out } = await take([...as(MANAGER), '--checked-how', 'by telephone', '--json'], { typed: MANAGER.password, askedToEnd: () => Promise.resolve() });
    expect([code, JSON.parse(out)]).toMatchObject([1, { error: { code: 'cancelled' } }]);
    expect(reopenedCount(receiver.file)).toEqual([0, 0]);
  });

  test('it is kept as it came, under a name that hides nothing, signed for and noted', async () => {
    const hostile = path.join(sender.folder, 'quarter\u202egpj.\u001b[2Jzip');
    copyFileSync(zip(), hostile);
    const bytes = readFileSync(zip());
    const { code, out } = await culet(['import', path.basename(hostile), '--casebook', receiver.file, ...as(MANAGER), '--password-stdin', '--checked-how', ' read out by telephone ', '--json'], { stdin: secret(`${MANAGER.password}\r\n`) });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ ok: true, id: digestOf(bytesSource(bytes)), name: 'quarter\ufffdgpj.\ufffd[2Jzip', bytes: bytes.byteLength, verdict: 'unknown-key', laboratory: 'Sending Laboratory', checkedHow: 'read out by telephone', takenBy: MANAGER.name });
    const casebook = reopened(receiver.file);
    const [kept] = await casebook.sealedBundles.list();
    expect(Buffer.compare(casebook.sealedBundles.read(kept!.id, 0, kept!.size), bytes)).toBe(0);
    const rows = (await casebook.audit.list({ caseId: null, limit: 4, offset: 0 })).rows.map(({ operation }) => operation);
    expect(rows.slice(0, 3)).toEqual(['checkpoints.make', 'bundles.takeIn', 'people.signIn']);
    expect((await casebook.ledgers.verify({ at: new Date().toISOString() }))?.sound).toBe(true);
    casebook.close();
  });

  test('a second time it is noticed', async () => {
    const { code, out } = await take([...as(MANAGER), '--checked-how', 'again', '--json'], { typed: MANAGER.password });
    expect([code, JSON.parse(out)]).toMatchObject([1, { error: { code: 'conflict' } }]);
  });
});

function reopenedCount(file: string): [number, number] {
  const casebook = reopened(file);
  const count = (table: string) => casebook.handle.read.get<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)!.n;
  const counts: [number, number] = [count('sealed_bundle'), count('sealed_bundle_piece')];
  casebook.close();
  return counts;
}
