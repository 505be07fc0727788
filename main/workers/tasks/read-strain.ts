import type { PairMark } from '../../../app/images/compare-pair.ts';
import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { PolariserResult } from '../../../app/images/polariser-result.ts';
import { readStrain, STRAIN_VERSION } from '../../../app/images/strain-pattern.ts';
import { wholeOutline } from '../../../app/images/whole-outline.ts';
import { ok, type Result } from '../../../app/result.ts';
import { decodePhotograph } from '../../images/decode-photograph.ts';
import { releasePoints } from '../../images/release-points.ts';
import type { Task } from '../task.ts';

/** Reads a photograph between crossed polarisers and the strain of each mark on it; without marks, of the one stone that it shows. */
export const readStrainTask: Task<{ readonly bytes: Uint8Array; readonly marks: readonly PairMark[] | null }, Result<{ marks: readonly PairMark[]; result: PolariserResult }, ImageRefusal>> = {
  async run({ bytes, marks }) {
    const decoded = await decodePhotograph(bytes);
    if (!decoded.ok) return decoded;
    const { photograph } = decoded.value;
    const { width, height } = photograph;
    const whole = marks === null ? wholeOutline(photograph) : null;
    const used = marks ?? (whole === null ? [] : [{ ...whole, id: 'found-1', number: 1, stoneId: null }]);
    const stones = used.map(({ id, number, stoneId, x, y, radius }) => ({
      markId: id, number, stoneId, x, y, radius, pattern: readStrain(photograph, { x: x * width - 0.5, y: y * height - 0.5, radius: radius * width }),
    }));
    releasePoints(photograph);
    return ok({ marks: used, result: { version: STRAIN_VERSION, stones } });
  },
};
