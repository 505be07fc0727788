import { beforeAll, describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { judgeReport } from '../../../../app/signature/judge-report.ts';
import type { ReportCheck } from '../../../../app/signature/report-check.ts';
import { checkReport } from '../../../../main/signature/check-report.ts';
import { hasTool, runTool } from '../../../unit/main/print/outside-tools.ts';
import { RECORDS, sampleKey, sampleSeed, signedSample } from '../../../unit/main/signature/signed-sample.ts';

let pdf: Uint8Array;
let place: { readonly at: number; readonly bytes: number };

function sound(file: Uint8Array): Extract<ReportCheck, { kind: 'sound' }> {
  const check = checkReport(file);
  if (check.kind !== 'sound') throw new Error(`expected a sound report: ${JSON.stringify(check)}`);
  return check;
}

beforeAll(async () => {
  pdf = await signedSample();
  place = sound(pdf).signed.statement.file.signature;
});

const parts = (check: ReportCheck): string[] => (check.kind === 'altered' ? check.altered.map(({ part, name }) => `${part} ${name}`.trim()) : [check.kind]);

/** Changes the file and checks it; the byte that was changed is named where the answer is wrong. */
function wrongAnswers(places: readonly number[], change: (file: Uint8Array, at: number) => Uint8Array): string[] {
  return places.flatMap((at) => {
    const check = checkReport(change(pdf, at));
    return check.kind === 'altered' ? [] : [`byte ${at}: ${check.kind}`];
  });
}

const flipped = (bits: number) => (file: Uint8Array, at: number): Uint8Array => {
  const other = new Uint8Array(file);
  other[at]! ^= bits;
  return other;
};

describe('a single changed byte is noticed', () => {
  test('every byte of the signature file', () => {
    const places = Array.from({ length: place.bytes }, (_, i) => place.at + i);
    expect(wrongAnswers(places, flipped(1))).toEqual([]);
    expect(wrongAnswers(places.filter((_, i) => i % 3 === 0), flipped(0x20))).toEqual([]);
  }, 120_000);

  test.each([1, 2, 3])('bytes from everywhere, seed %i: turned, taken out, put in', (seed) => {
    const random = seededRandom(seed);
    const places = Array.from({ length: 400 }, () => random.below(pdf.byteLength));
    expect(wrongAnswers(places, flipped(1 << (seed + 3)))).toEqual([]);
    expect(wrongAnswers(places.slice(0, 100), (file, at) => Buffer.concat([file.subarray(0, at), file.subarray(at + 1)]))).toEqual([]);
    expect(wrongAnswers(places.slice(0, 100), (file, at) => Buffer.concat([file.subarray(0, at), Buffer.of(0x20), file.subarray(at)]))).toEqual([]);
  }, 120_000);

  test('the first and the last bytes', () => {
    const ends = Array.from({ length: 120 }, (_, i) => i).flatMap((i) => [i, pdf.byteLength - 1 - i]);
    expect(wrongAnswers(ends, flipped(1))).toEqual([]);
  }, 60_000);
});

describe('larger damage is noticed, and named where it can be', () => {
  test('cut off anywhere, it is never sound; where the beginning is left, it is known as a damaged report', () => {
    for (let length = 0; length < pdf.byteLength; length += 911) {
      const { kind } = checkReport(pdf.subarray(0, length));
      expect([length, kind]).toEqual([length, length < 64 ? 'not-a-report' : 'altered']);
    }
  }, 60_000);

  test('bytes behind the end are told apart from changed pages', () => {
    expect(parts(checkReport(Buffer.concat([pdf, Buffer.from('\n% a note\n')])))).toEqual(['file']);
    expect(parts(checkReport(Buffer.concat([Buffer.from('x'), pdf])))).toEqual(['pages']);
    expect(parts(checkReport(Buffer.concat([pdf, pdf])))).toEqual(['file']);
  });

  test('a changed page, a changed record and a changed report.json are named', () => {
    const raw = Buffer.from(pdf).toString('latin1');
    const inStream = (marker: string): number => raw.indexOf('stream\n', raw.indexOf(marker)) + 15;
    expect(parts(checkReport(flipped(1)(pdf, raw.indexOf('/MediaBox') + 20)))).toEqual(['pages']);
    expect(parts(checkReport(flipped(1)(pdf, inStream('/Subtype /application#2Fjson'))))).toEqual(['report.json']);
    expect(parts(checkReport(flipped(1)(pdf, inStream('/Subtype /image#2Fpng'))))).toEqual([`attached record ${RECORDS[1]!.name}`]);
    expect(parts(checkReport(flipped(1)(pdf, inStream('/Subtype /text#2Fplain'))))).toEqual([`attached record ${RECORDS[0]!.name}`]);
    expect(parts(checkReport(flipped(1)(pdf, place.at + 30)))).toEqual(['signature']);
    expect(parts(checkReport(flipped(1)(pdf, raw.indexOf('/AFRelationship') + 18)))).toEqual(['file']);
  });

  test('two reports in one file are told by their numbers', async () => {
    const check = checkReport(Buffer.concat([pdf, await signedSample({ revision: 2 })]));
    expect(check.kind === 'altered' ? check.altered[0]?.sentence : '').toContain('S-2026-0088, revision 1; S-2026-0088, revision 2');
  });

  test('the signature of another report, or of another key, does not pass', async () => {
    const other = await signedSample({ number: 'S-2026-0089' });
    const moved = new Uint8Array(pdf);
    const from = sound(other).signed.statement.file.signature;
    moved.set(other.subarray(from.at, from.at + from.bytes), place.at);
    expect(checkReport(moved).kind).toBe('altered');
    const known = { keys: [{ publicKey: Buffer.from(sampleKey()).toString('hex'), whose: 'Saltmarsh', own: false, distrust: '' }], standing: () => null };
    expect(judgeReport(checkReport(await signedSample({ seed: sampleSeed(4) })), known).verdict).toBe('unknown-key');
    expect(judgeReport(checkReport(pdf), known).verdict).toBe('authentic');
  });

  test.skipIf(!hasTool('qpdf'))('written anew by another program: the pages can’t be compared, the attached files can', () => {
    for (const option of ['--object-streams=preserve', '--object-streams=generate', '--recompress-flate']) {
      const { files } = runTool('qpdf', [option, 'report.pdf', 'anew.pdf'], pdf);
      const check = checkReport(files.get('anew.pdf')!);
      expect([option, parts(check)]).toEqual([option, ['pages']]);
      expect(check.kind === 'altered' ? check.altered[0]?.sentence : '').toContain('the attached files are as they were');
    }
  });

  test('noise, other PDFs and nothing at all are no reports, and nothing fails', () => {
    const random = seededRandom(7);
    for (const size of [0, 1, 8, 1000, 50_000]) {
      expect(checkReport(Uint8Array.from({ length: size }, () => random.below(256))).kind).toBe('not-a-report');
    }
    for (const text of ['%PDF-1.7\n', '/Type /EmbeddedFile', '1 0 obj\n<</Type /EmbeddedFile /Length 99999999999>>\nstream', '1 0 obj <</Type /EmbeddedFile /Filter /FlateDecode /Length 4>>\nstream\nabcd\nendstream', '%PDF-1.4 /EmbeddedFile /EmbeddedFile stream stream']) {
      expect(checkReport(Buffer.from(text)).kind).toBe('not-a-report');
    }
  });
});
