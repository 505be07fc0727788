import { brightnessGrid } from '../../../app/images/brightness-grid.ts';
import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { Outline } from '../../../app/images/photograph.ts';
import { OUTLINE_DEFAULTS, suggestOutlines } from '../../../app/images/suggest-outlines.ts';
import { ok, type Result } from '../../../app/result.ts';
import { decodePhotograph } from '../../images/decode-photograph.ts';
import type { Task } from '../task.ts';

/** Reads a photograph and proposes where its stones are. */
export const suggestOutlinesTask: Task<{ readonly bytes: Uint8Array }, Result<Outline[], ImageRefusal>> = {
  async run({ bytes }) {
    const decoded = await decodePhotograph(bytes, { longSide: OUTLINE_DEFAULTS.longSide, use: 'look' });
    return decoded.ok ? ok(suggestOutlines(brightnessGrid(decoded.value.photograph, OUTLINE_DEFAULTS.longSide))) : decoded;
  },
};
