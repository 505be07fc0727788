import { canonicalJson } from '../../../../app/custody/canonical-json.ts';
import { reportDocument, type ReportDocument } from '../../../../app/report-document/report-document.ts';
import { keyIdOf } from '../../../../app/signature/fingerprint.ts';
import { publicKeyOf, signWith } from '../../../../main/keys/ed25519.ts';
import type { Signer } from '../../../../main/keys/signer.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import { describeFile } from '../../../../main/signature/describe-file.ts';
import { signReport } from '../../../../main/signature/sign-report.ts';
import { createHash } from 'node:crypto';
import { sampleReport } from '../print/sample-report.ts';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A key that is no secret: its private part is thirty-two times the same byte. */
export const sampleSeed = (byte = 9): Uint8Array => new Uint8Array(32).fill(byte);
export const sampleKey = (byte = 9): Uint8Array => publicKeyOf(sampleSeed(byte));

export const signerOf = (seed: Uint8Array): Signer => ({
  sign: async (message) => ({ ok: true, value: { keyId: keyIdOf(publicKeyOf(seed)), signature: signWith(seed, message), publicKey: publicKeyOf(seed) } }),
});

export const RECORDS = [
  { name: 'R5-emission.txt', mediaType: 'text/plain', photograph: false, description: 'Raw record of run R5', bytes: Buffer.from('532.1 17\n532.2 19\n'.repeat(40)) },
  { name: 'photo-table.png', mediaType: 'image/png', photograph: true, description: 'Photograph', bytes: Buffer.from('a picture, not packed'.repeat(10)) },
];

/** report.json of the sample, shortened to what a reader of the file needs. */
export function sampleDocument(number: string, revision: number): ReportDocument {
  const { laboratory, client, title, issuedAt, caseNumber } = sampleReport();
  return reportDocument.parse({
    schema: 'culet-report-document-1', language: 'en', demonstration: true, draft: false, number, revision, issuedAt, issuedBy: 'T. Brambilla',
    subject: { kind: 'single-stone', label: 'A-3', stones: 1 }, relatesTo: 'Results relate only to the items described here, as received.', printed: { title, model: '0'.repeat(64), says: [] }, lots: [],
    laboratory: { name: laboratory.name, address: laboratory.address, zone: laboratory.zone }, client, case: { number: caseNumber, receivedAt: issuedAt, asks: '' },
    scope: '', limits: [], signatures: [], items: [], stones: [], custody: [],
    records: RECORDS.map(({ name, mediaType, photograph, bytes }) => ({ runs: photograph ? [] : ['R5'], name, mediaType, bytes: bytes.byteLength, sha256: sha256(bytes), attachedAs: name, leftOut: '' })),
  });
}

/** A signed report with invented contents. */
export async function signedSample(options: { readonly seed?: Uint8Array; readonly revision?: number; readonly number?: string } = {}): Promise<Uint8Array> {
  const { seed = sampleSeed(), revision = 1, number = 'S-2026-0088' } = options;
  const model = sampleReport({ revision, number });
  const document = canonicalJson(sampleDocument(number, revision));
  const pdf = await renderReport(model, { document, records: RECORDS, signed: true });
  const signed = await signReport({ model, document, pdf, file: describeFile(pdf) }, signerOf(seed));
  if (!signed.ok) throw new Error(signed.error.message);
  return signed.value;
}
