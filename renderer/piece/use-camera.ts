import { useCallback, useEffect, useState } from 'react';
import type { Point, Size } from '../../app/piece/picture-view.ts';

/** Where the content lies in the frame: frame point = content point × zoom + shift. */
export type Camera = { readonly zoom: number; readonly x: number; readonly y: number };

export type CameraActions = {
  /** Nearer or further by a factor, around a point of the frame or its middle. */
  zoomBy(factor: number, around?: Point): void;
  shiftBy(dx: number, dy: number): void;
  fit(): void;
  /** One point of the content to one point of the screen. */
  actual(): void;
};

/** Free px around content that fits. */
const AROUND = 24;
/** Points of the content that one px of the frame shows at the nearest, as a zoom. */
const NEAREST = 16;

function fitted(frame: Size, content: Size, around: number): Camera {
  const zoom = Math.min((frame.width - 2 * around) / content.width, (frame.height - 2 * around) / content.height);
  return { zoom, x: (frame.width - content.width * zoom) / 2, y: (frame.height - content.height * zoom) / 2 };
}

/** Zooms around a point so that it stays where it is. */
function zoomed(camera: Camera, factor: number, around: Point, least: number): Camera {
  const zoom = Math.min(NEAREST, Math.max(least, camera.zoom * factor));
  const by = zoom / camera.zoom;
  return { zoom, x: around.x - (around.x - camera.x) * by, y: around.y - (around.y - camera.y) * by };
}

/** Keeps a part of the content in the frame, so that it can't be lost. */
function keptInSight(camera: Camera, frame: Size, content: Size): Camera {
  const [w, h] = [content.width * camera.zoom, content.height * camera.zoom];
  const margin = 60;
  return { ...camera, x: Math.min(frame.width - margin, Math.max(margin - w, camera.x)), y: Math.min(frame.height - margin, Math.max(margin - h, camera.y)) };
}

/**
 * How a content of a size is looked at through a frame. It fits until somebody zooms or shifts, and fits again when the content changes its size.
 * @param around free px around it where it fits: room for what stands beside the content
 */
export function useCamera(frame: Size | null, content: Size | null, around = AROUND): readonly [Camera | null, CameraActions] {
  const [own, setOwn] = useState<Camera | null>(null);
  const [cw, ch] = [content?.width ?? 0, content?.height ?? 0];
  useEffect(() => { setOwn(null); }, [cw, ch]);
  const ready = frame !== null && cw > 0 && ch > 0 && frame.width > 2 * around && frame.height > 2 * around;
  const home = ready ? fitted(frame, { width: cw, height: ch }, around) : null;
  const camera = own ?? home;
  const move = useCallback((alter: (camera: Camera) => Camera) => {
    if (frame === null || home === null) return;
    setOwn((now) => keptInSight(alter(now ?? home), frame, { width: cw, height: ch }));
  }, [frame, home, cw, ch]);
  const actions: CameraActions = {
    zoomBy: (factor, around) => { if (frame && home) move((now) => zoomed(now, factor, around ?? { x: frame.width / 2, y: frame.height / 2 }, home.zoom / 2)); },
    shiftBy: (dx, dy) => { move((now) => ({ ...now, x: now.x + dx, y: now.y + dy })); },
    fit: () => { setOwn(null); },
    actual: () => { if (frame && home) move((now) => zoomed(now, 1 / now.zoom, { x: frame.width / 2, y: frame.height / 2 }, Math.min(1, home.zoom / 2))); },
  };
  return [camera, actions];
}
