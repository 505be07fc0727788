import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCaptured } from './run-captured.ts';

let folder = '';
beforeAll(() => { folder = mkdtempSync(path.join(tmpdir(), 'culet-conclude-')); });
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

async function conclude(document: unknown) {
  const text = typeof document === 'string' ? document : JSON.stringify(document);
  writeFileSync(path.join(folder, 'stone.json'), text);
  const { code, out } = await runCaptured(['conclude', 'stone.json', '--json'], { workingFolder: folder });
  return { code, answer: JSON.parse(out) as Record<string, unknown> & { reasons: string[]; missing: string[]; nextTests: { method: string; why: string; caution: string }[]; error: { code: string; message: string } } };
}
const STONE = { mounted: false, colourClass: 'colourless' };
const diamond = { code: 'diamond-line:present' };

describe('culet conclude', () => {
  test('codes alone suffice: the table knows method and weight', async () => {
    const { code, answer } = await conclude({ stone: STONE, findings: [diamond, { code: 'centre:N3' }, { code: 'infrared:type-IaAB' }] });
    expect(code).toBe(0);
    expect(answer).toMatchObject({ ok: true, conclusion: 'natural', rule: 'two-strong', against: [], counted: ['finding-1', 'finding-2', 'finding-3'] });
    for (const field of ['reasons', 'against', 'missing', 'nextTests', 'chain', 'hypotheses']) expect(Array.isArray(answer[field]), field).toBe(true);
    expect(answer.table).toMatch(/^evidence table/);
  });
  test('observations are read in their order, by the rules of the bench', async () => {
    const { answer } = await conclude({
      stone: STONE, findings: [diamond],
      observations: [
        { method: 'fluorescence-long-wave', colour: 'none', strength: 'inert' }, { method: 'fluorescence-short-wave', colour: 'greenish-blue', strength: 'weak' },
        { method: 'phosphorescence', colour: 'greenish-blue', strength: 'moderate', seconds: 45 }, { method: 'growth-pattern', pattern: 'cuboctahedral-sectors' },
      ],
    });
    expect(answer).toMatchObject({ conclusion: 'grown-hpht', warnings: [] });
  });
  test('short-wave light minutes before long-wave is warned of, by the list or by the clock', async () => {
    const short = { method: 'fluorescence-short-wave', colour: 'blue', strength: 'weak' };
    const long = { method: 'fluorescence-long-wave', colour: 'blue', strength: 'weak' };
    expect((await conclude({ stone: STONE, observations: [short, long] })).answer.warnings).toMatchObject([{ code: 'short-wave-first' }]);
    expect((await conclude({ stone: STONE, observations: [{ ...short, at: '2026-11-25T09:00:00.000Z' }, { ...long, at: '2026-11-25T11:00:00.000Z' }] })).answer.warnings).toEqual([]);
  });
  test('an open stone is told its next tests with cautions, possible for its setting and size', async () => {
    const { answer } = await conclude({ stone: { mounted: true, setting: 'closed-back', colourClass: 'colourless', weightCt: 0.02 }, findings: [diamond, { code: 'centre:SIV', run: 'R2' }] });
    expect(answer.conclusion).toBe('undetermined');
    const methods = answer.nextTests.map((next) => next.method);
    expect(methods[0]).toBe('growth-pattern');
    for (const method of ['infrared', 'absorption', 'magnet', 'specific-gravity']) expect(methods).not.toContain(method);
    expect(answer.nextTests.every((next) => next.caution.length > 0)).toBe(true);
    expect(answer.missing.join(' ')).toContain('Not possible on this mounted stone (closed back)');
  });
  test('what does not count is listed and does not count', async () => {
    const { answer } = await conclude({ stone: STONE, findings: [diamond, { code: 'centre:N3' }, { code: 'infrared:type-IaAB', counts: false }, { code: 'pattern:octahedral-zoning', setAside: true }, { code: 'no:such', strength: 'diagnostic', supports: 'natural' }] });
    expect(answer.conclusion).toBe('undetermined');
    expect(answer.missing.filter((sentence) => sentence.startsWith('Does not count'))).toHaveLength(3);
  });
  test('a house’s protocol: what it asks and was not done', async () => {
    const { answer } = await conclude({ stone: STONE, findings: [diamond, { code: 'centre:N3' }, { code: 'infrared:type-IaAB' }], protocol: { name: 'loose colourless', asks: ['raman', 'infrared', 'growth-pattern'] } });
    expect(answer.missing.join(' ')).toContain('The protocol “loose colourless” asks for growth pattern: not done.');
  });
  test('findings as the analysis prints them can be given back', async () => {
    const fact = { code: 'centre:N3', statement: 'Emission line at 415.3 nm: N3.', strength: 'strong', supports: 'natural', method: 'photoluminescence', caution: 'see there', source: 'a paper' };
    expect((await conclude({ stone: STONE, findings: [diamond, fact, { code: 'infrared:type-IaAB' }] })).answer.reasons.join(' ')).toContain('415.3 nm');
  });
  test.each([
    ['{', 'not-json'], [{ stone: { mounted: false } }, 'invalid-document'], [{ stone: STONE, finding: [] }, 'invalid-document'],
    [{ stone: STONE, findings: [{ code: 'centre:N3', strength: 'very' }] }, 'invalid-document'],
  ])('%j is refused in a sentence', async (document, expected) => {
    const { code, answer } = await conclude(document);
    expect(code).toBe(1);
    expect(answer).toMatchObject({ ok: false, error: { code: expected } });
    expect(answer.error.message).toContain('stone.json');
  });
  test('without --json it speaks in sentences; - reads standard input; a missing file is named', async () => {
    const stdin = new TextEncoder().encode(JSON.stringify({ stone: STONE, findings: [diamond] }));
    const { out, code } = await runCaptured(['conclude', '-'], { stdin });
    expect(code).toBe(0);
    expect(out).toMatch(/^undetermined – further testing required\n\nReasons\n {2}• Diamond check passed[\s\S]*Next tests\n {2}• Growth pattern/);
    expect((await runCaptured(['conclude', 'gone.json'], { workingFolder: folder })).err).toContain('“gone.json” cannot be read');
  });
});
