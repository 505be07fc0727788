import type { PairMark } from '../../../app/images/compare-pair.ts';
import type { ExifFacts } from '../../../app/images/exif.ts';
import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { MarkLight } from '../../../app/images/mark-light.ts';
import { measureFrame } from '../../../app/images/measure-frame.ts';
import { suggestMarks } from '../../../app/images/suggest-marks.ts';
import { ok, type Result } from '../../../app/result.ts';
import { decodePhotograph } from '../../images/decode-photograph.ts';
import { releasePoints } from '../../images/release-points.ts';
import type { Task } from '../task.ts';

type Measured = { readonly exif: ExifFacts; readonly width: number; readonly height: number; readonly marks: readonly PairMark[]; readonly lights: readonly (MarkLight | null)[] };

/** Reads one frame and measures its marks; without marks, those it finds itself. The points stay in the worker. */
export const measureFrameTask: Task<{ readonly bytes: Uint8Array; readonly marks: readonly PairMark[] | null }, Result<Measured, ImageRefusal>> = {
  async run({ bytes, marks }) {
    const decoded = await decodePhotograph(bytes);
    if (!decoded.ok) return decoded;
    const { facts: { exif, width, height }, photograph } = decoded.value;
    const used = marks ?? suggestMarks(photograph);
    const lights = measureFrame(photograph, used);
    releasePoints(photograph);
    return ok({ exif, width, height, marks: used, lights });
  },
};
