import { useEffect, useMemo, useState } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { useAskOnce } from '../queries.ts';

export type Picture = {
  readonly url: string;
  /** Size of the upright photograph itself, in points; what is shown may be a smaller copy. */
  readonly width: number; readonly height: number;
};
export type PictureState = { readonly picture: Picture | null; readonly failure: Failure | null };

/** Bytes up to which the file itself is shown at once; a larger one is first shown as a smaller copy. */
export const SHOWN_AT_ONCE = 4_000_000;
/** Longer side of the copy that is worked on, in points. */
export const WORKING_SIDE = 2400;
/** Kinds that every window draws by itself; others are always shown as a copy. */
export const isDrawn = (mediaType: string): boolean => mediaType === 'image/png' || mediaType === 'image/jpeg';

type Content = { readonly mediaType: string; readonly bytes: Uint8Array };

/** An address for bytes in this window, given back when they are no longer shown. */
export function useBlobUrl(content: Content | undefined): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!content) { setUrl(null); return undefined; }
    const made = URL.createObjectURL(new Blob([content.bytes as BlobPart], { type: content.mediaType }));
    setUrl(made);
    return () => { URL.revokeObjectURL(made); };
  }, [content]);
  return url;
}

/** The size of a picture as the window draws it: upright, as its file says. */
function useDrawnSize(url: string | null): { readonly width: number; readonly height: number } | 'unreadable' | null {
  const [found, setFound] = useState<{ url: string; size: { width: number; height: number } | 'unreadable' } | null>(null);
  useEffect(() => {
    if (url === null) return undefined;
    let wanted = true;
    const image = new Image();
    image.onload = () => { if (wanted) setFound({ url, size: { width: image.naturalWidth, height: image.naturalHeight } }); };
    image.onerror = () => { if (wanted) setFound({ url, size: 'unreadable' }); };
    image.src = url;
    return () => { wanted = false; };
  }, [url]);
  return found !== null && found.url === url ? found.size : null;
}

const UNREADABLE: Failure = { code: 'unreadable', message: 'The window can’t draw this picture.', next: 'Save it as it came and look at it elsewhere; the record itself is kept as it is.' };

/**
 * A photograph as the window shows it. Small files are drawn by the window itself; of large ones, and of kinds that it can't draw,
 * the program makes a smaller upright copy away from the window.
 * @param photograph null waits
 * @param longSide longer side of a copy, in points: less for a thumbnail
 */
export function usePicture(photograph: Pick<PhotographView, 'id' | 'mediaType' | 'size'> | null, longSide = WORKING_SIDE): PictureState {
  const atOnce = photograph !== null && isDrawn(photograph.mediaType) && photograph.size <= SHOWN_AT_ONCE;
  const content = useAskOnce('photographs.content', atOnce ? { photographId: photograph.id } : null);
  const preview = useAskOnce('images.preview', photograph !== null && !atOnce ? { photographId: photograph.id, longSide } : null);
  const jpeg = preview.data?.jpeg;
  const copy = useMemo(() => (jpeg ? { mediaType: 'image/jpeg', bytes: jpeg } : undefined), [jpeg]);
  const url = useBlobUrl(atOnce ? content.data : copy);
  const size = useDrawnSize(atOnce ? url : null);
  const failure = (atOnce ? content.error : preview.error)?.failure ?? (size === 'unreadable' ? UNREADABLE : null);
  if (failure !== null || url === null) return { picture: null, failure };
  if (!atOnce && preview.data) return { picture: { url, width: preview.data.facts.width, height: preview.data.facts.height }, failure: null };
  return { picture: size === null || size === 'unreadable' ? null : { url, ...size }, failure: null };
}
