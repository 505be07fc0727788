import type { PhotographView } from '../../app/contract/cases.ts';
import { usePicture } from './use-picture.ts';

/** Longer side of a thumbnail's copy in points: sharp at twice the density of its largest place. */
const THUMB_SIDE = 480;

/** A photograph, small; says why where it can't be shown. */
export function Thumbnail({ photograph, className }: { readonly photograph: PhotographView; readonly className: string }) {
  const { picture, failure } = usePicture(photograph, THUMB_SIDE);
  if (failure) return <span className={`warn ${className}`}>{failure.message}</span>;
  return picture ? <img src={picture.url} alt={photograph.caption || photograph.name} className={className} decoding="async" /> : <span className={className} />;
}
