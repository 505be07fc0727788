import type { PhotographView } from '../../app/contract/cases.ts';
import { useHouse } from '../house/house-context.tsx';
import { showMoment } from '../look/time.ts';
import { LIGHT_WORDS } from './light-words.ts';
import { Thumbnail } from './thumbnail.tsx';

/** A photograph in a list: small, with its words, its light and when it was taken in. */
export function PhotographLine({ photograph }: { readonly photograph: PhotographView }) {
  const { laboratory } = useHouse();
  return (
    <li className="photograph-line"><Thumbnail photograph={photograph} className="thumb-line" /><span><span className="two-lines">{photograph.caption || photograph.name}</span><span className="quiet">{LIGHT_WORDS[photograph.light]}, {showMoment(photograph.at, laboratory.zone)}</span></span></li>
  );
}
