import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { hkdf } from '@noble/hashes/hkdf.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Credential, CredentialKind, NewCredential } from '../../db/store/credentials.ts';
import { sealToOf } from '../keys/sealed-box.ts';

/** Cost of scrypt (RFC 7914) that the OWASP Password Storage Cheat Sheet names first: N 2^17, r 8, p 1. */
export const PASSWORD_COST = { n: 2 ** 17, r: 8, p: 1 } as const;
type Cost = { readonly n: number; readonly r: number; readonly p: number };

const SALT_BYTES = 16;
const KEY_BYTES = 32;
/** scrypt needs 128 N r bytes (RFC 7914, 2); Node refuses more than 32 MiB unless told. */
const memoryFor = ({ n, r }: Cost): number => 2 * 128 * n * r;

/** What a password opens: its proof for the door, and the private part (X25519) that closed copies are sealed to. */
export type Derived = { readonly proof: Uint8Array; readonly privatePart: Uint8Array };

/** Runs on one of Node's own threads: about half a second and 128 MiB, during which nothing else waits. */
function stretch(secret: string, salt: Uint8Array, cost: Cost): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    scrypt(utf8ToBytes(secret), salt, KEY_BYTES, { N: cost.n, r: cost.r, p: cost.p, maxmem: memoryFor(cost) }, (fault, key) => {
      if (fault === null) resolve(new Uint8Array(key));
      else reject(fault);
    });
  });
}

/** Two keys that say nothing of each other (HKDF, RFC 5869), so that the stored proof does not open what is sealed. */
async function derive(secret: string, salt: Uint8Array, cost: Cost): Promise<Derived> {
  const key = await stretch(secret, salt, cost);
  const part = (purpose: string): Uint8Array => hkdf(sha256, key, salt, utf8ToBytes(purpose), KEY_BYTES);
  const derived = { proof: part('Culet proof of a password, 1'), privatePart: part('Culet key of a password, 1') };
  key.fill(0);
  return derived;
}

/** A credential from a secret that was just chosen or given out, with what it opens. */
export async function newCredential(id: string, kind: CredentialKind, secret: string): Promise<{ readonly credential: NewCredential; readonly privatePart: Uint8Array }> {
  const salt = new Uint8Array(randomBytes(SALT_BYTES));
  const { proof, privatePart } = await derive(secret, salt, PASSWORD_COST);
  return {
    credential: { id, kind, salt: bytesToHex(salt), costN: PASSWORD_COST.n, costR: PASSWORD_COST.r, costP: PASSWORD_COST.p, proof: bytesToHex(proof), sealTo: sealToOf(privatePart) },
    privatePart,
  };
}

/** What the secret opens, or null where it is not the right one. Takes as long either way. */
export async function openCredential(credential: Credential, secret: string): Promise<Uint8Array | null> {
  const { proof, privatePart } = await derive(secret, hexToBytes(credential.salt), { n: credential.costN, r: credential.costR, p: credential.costP });
  const kept = hexToBytes(credential.proof);
  return kept.byteLength === proof.byteLength && timingSafeEqual(kept, proof) ? privatePart : null;
}

/** For a name that is not there: takes as long as a wrong password. */
export async function waste(secret: string): Promise<void> {
  await derive(secret, new Uint8Array(SALT_BYTES), PASSWORD_COST);
}

/** Whether the cost it was made with is below the present one: it is then made anew at the next sign-in. */
export const isCheap = ({ costN, costR, costP }: Credential): boolean =>
  costN * costR * costP < PASSWORD_COST.n * PASSWORD_COST.r * PASSWORD_COST.p;
