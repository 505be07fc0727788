import { Fragment } from 'react';

/** Numbers with their uncertainty, and pairs such as 596.5/597.2. Digits inside a word (H3, N2) stay in the word's face. */
const NUMBER = /(?<![\p{L}\d.])(−?\d[\d\u00a0]*(?:\.\d+)?(?:\s?(?:±|\/|–)\s?\d[\d\u00a0]*(?:\.\d+)?)*)(?![\p{L}\d])/gu;

/** A sentence with its numbers in the face of numbers. */
export function WithNumbers({ text }: { readonly text: string }) {
  return text.split(NUMBER).map((part, i) => (i % 2 === 1 ? <span key={i} className="mono">{part}</span> : <Fragment key={i}>{part}</Fragment>));
}
