import { textDigest } from '../print/content-digest.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { ReportModel } from '../../app/report/report-model.ts';
import { ok, type Result } from '../../app/result.ts';
import type { ReportStatement, SignedFile } from '../../app/signature/report-statement.ts';
import { writeSignatureFile } from '../../app/signature/signature-file.ts';
import { statementBytes } from '../../app/signature/signed-statement.ts';
import type { Signer } from '../keys/signer.ts';

/** A drawn report with room for its signature. `document`: text of the attached report.json. */
export type ReportToSign = { readonly model: ReportModel; readonly document: string; readonly pdf: Uint8Array; readonly file: SignedFile };

/** Signs a report over what it says and over every byte of its file. Fails with the signer's sentence. */
export async function signReport({ model, document, pdf, file }: ReportToSign, signer: Signer): Promise<Result<Uint8Array<ArrayBuffer>, Failure>> {
  const statement: ReportStatement = {
    statement: 'culet-report-1', laboratory: model.laboratory.name, demonstration: model.demonstration,
    number: model.number, revision: model.revision, issuedAt: model.issuedAt,
    content: { bytes: Buffer.byteLength(document, 'utf8'), sha256: textDigest(document) }, file,
  };
  const signed = await signer.sign(statementBytes(statement));
  if (!signed.ok) return signed;
  const whole = new Uint8Array(pdf);
  whole.set(writeSignatureFile(statement, signed.value.signature, signed.value.publicKey), file.signature.at);
  return ok(whole);
}
