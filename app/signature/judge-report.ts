import { bytesToHex } from '@noble/hashes/utils.js';
import { fingerprintOf, keyIdOf } from './fingerprint.ts';
import type { ReportCheck } from './report-check.ts';
import type { ReportVerdict, SignedAs, Standing } from './report-verdict.ts';
import type { ReportStatement } from './report-statement.ts';
import type { SignatureFile } from './signature-file.ts';

/** A public key that somebody vouches for. `publicKey`: 64 hexadecimal digits. `distrust`: why it no longer counts; empty where it does. */
export type KnownKey = { readonly publicKey: string; readonly whose: string; readonly own: boolean; readonly distrust: string };

/** What is known beside the file itself. */
export type Known = { readonly keys: readonly KnownKey[]; readonly standing: (statement: ReportStatement, own: boolean) => Standing | null };

type Judged = Omit<ReportVerdict, 'sha256' | 'bytes'>;

const HOW_TO_GET_A_KEY = 'Ask the laboratory for the file of its public key, compare the fingerprint by another way, for instance by telephone, and keep the key under House.';

const nameOf = ({ number, revision }: Pick<SignedAs, 'number' | 'revision'>): string => (revision > 1 ? `${number}, revision ${revision}` : number);

function signedAs({ laboratory, demonstration, number, revision, issuedAt, content }: ReportStatement): SignedAs {
  return { laboratory, demonstration, number, revision, issuedAt, content: content.sha256 };
}

/** Sentences for files that hold no signature that could be checked. */
const WITHOUT: Readonly<Record<'unsigned' | 'draft' | 'not-a-report', { readonly sentence: string; readonly next: string }>> = {
  unsigned: {
    sentence: 'This is a screening report of Culet without a signature: it was issued before reports were signed, or its signature was taken out.',
    next: 'Ask the laboratory that issued it: it keeps every report as it was issued, with its SHA-256, and can compare.',
  },
  draft: {
    sentence: 'This is a draft. It was never issued, and nobody stands behind it.',
    next: 'Ask the laboratory for the report as it was issued.',
  },
  'not-a-report': {
    sentence: 'This is not a report of Culet, or only a copy of its pages that another program made.',
    next: 'Check the PDF file as the laboratory handed it out: printing, scanning, exporting and closing it with a password make a new file without the signature.',
  },
};

function keyOf({ publicKey }: SignatureFile, known: KnownKey | undefined): NonNullable<ReportVerdict['key']> {
  return { id: keyIdOf(publicKey), fingerprint: fingerprintOf(publicKey), whose: known?.whose ?? null, distrust: known?.distrust ?? '' };
}

/** What a check means to whoever knows these keys and reports. Whose the key is decides between authentic and unknown; nothing else does. */
export function judgeReport(check: ReportCheck, { keys, standing }: Known): Judged {
  if (check.kind !== 'sound' && check.kind !== 'altered') {
    return { verdict: check.kind, ...WITHOUT[check.kind], report: null, key: null, altered: [], standing: null };
  }
  const { signed } = check;
  const known = signed === null ? undefined : keys.find(({ publicKey }) => publicKey === bytesToHex(signed.publicKey));
  const report = signed === null ? null : signedAs(signed.statement);
  const key = signed === null ? null : keyOf(signed, known);
  if (check.kind === 'altered') {
    return {
      verdict: 'altered', report, key, altered: [...check.altered], standing: null,
      sentence: report === null ? 'This file is not a report as it was issued.' : `This file is not report ${nameOf(report)} as it was issued: it was altered.`,
      next: 'Do not rely on it. Ask the laboratory for the report as it was issued, byte for byte.',
    };
  }
  const { statement } = check.signed;
  const name = nameOf(statement);
  if (known === undefined || known.distrust !== '') {
    return {
      verdict: 'unknown-key', report, key, altered: [], standing: null,
      sentence: known === undefined
        ? `Every byte of this report is as it was signed. It says that it is report ${name} of ${statement.laboratory}, but nobody here knows whose key signed it.`
        : `Every byte of this report is as it was signed, by a key that was kept as that of ${known.whose}. ${known.distrust}`,
      next: HOW_TO_GET_A_KEY,
    };
  }
  const invented = statement.demonstration ? ' It is part of the demonstration: laboratory, stones and key are invented, and it proves nothing.' : '';
  const by = known.whose === statement.laboratory ? known.whose : `${known.whose}; it names the laboratory ${statement.laboratory}`;
  const stands = standing(statement, known.own);
  return {
    verdict: 'authentic', report, key, altered: [], standing: stands,
    sentence: `This is report ${name}, every byte as it was issued, signed by ${by}.${invented}`,
    next: `The signature says who issued it and that it is unaltered; it does not say that the opinion is right${stands === null ? ', nor that the report still counts: ask the laboratory, which knows whether it was replaced or withdrawn' : ''}.`,
  };
}
