import { useEffect, useMemo, useState } from 'react';
import type { PhotographView } from '../../app/contract/cases.ts';
import { useAskOnce } from '../queries.ts';
import { isDrawn, SHOWN_AT_ONCE, useBlobUrl, WORKING_SIDE, type Picture } from './use-picture.ts';

/** Longest copy that the program makes, in points: for kinds that the window can't draw. */
const MOST_SIDE = 4096;

/** The address once the window has unpacked what lies there: it is laid in place of the copy without a gap. */
function useUnpacked(url: string | null): string | null {
  const [ready, setReady] = useState<string | null>(null);
  useEffect(() => {
    if (url === null) return undefined;
    let wanted = true;
    const image = new Image();
    image.src = url;
    image.decode().then(() => { if (wanted) setReady(url); }, () => undefined); // What can't be unpacked stays as its copy.
    return () => { wanted = false; };
  }, [url]);
  return url !== null && ready === url ? url : null;
}

/**
 * The picture to draw at this nearness: of a large photograph first its smaller copy, and from where the copy has no more points to give,
 * all points of the file (of kinds that the window can't draw, a larger copy), unpacked by the window's own decoder away from the view.
 * @param zoom px of the screen for one point of the photograph
 */
export function useNearPicture(photograph: Pick<PhotographView, 'id' | 'mediaType' | 'size'> | null, picture: Picture | null, zoom: number | null): Picture | null {
  const [near, setNear] = useState<string | null>(null);
  const id = photograph?.id ?? null;
  const byWindow = photograph !== null && isDrawn(photograph.mediaType);
  const longest = picture === null ? 0 : Math.max(picture.width, picture.height);
  const isCopy = photograph !== null && longest > WORKING_SIDE && !(byWindow && photograph.size <= SHOWN_AT_ONCE);
  const asks = isCopy && zoom !== null && longest * zoom * window.devicePixelRatio > WORKING_SIDE;
  // Once it was looked at so near it stays: going back and forth must not load it again.
  useEffect(() => { if (asks) setNear(id); }, [asks, id]);
  const wanted = isCopy && near === id ? id : null;
  const content = useAskOnce('photographs.content', wanted !== null && byWindow ? { photographId: wanted } : null);
  const larger = useAskOnce('images.preview', wanted !== null && !byWindow ? { photographId: wanted, longSide: MOST_SIDE } : null);
  const jpeg = larger.data?.jpeg;
  const copy = useMemo(() => (jpeg ? { mediaType: 'image/jpeg', bytes: jpeg } : undefined), [jpeg]);
  const url = useUnpacked(useBlobUrl(wanted === null ? undefined : byWindow ? content.data : copy));
  return picture === null || url === null ? picture : { ...picture, url };
}
