import { useEffect, useReducer, useState } from 'react';
import { door } from '../door.ts';
import { useKeptDraft } from '../drafts/use-kept-draft.ts';
import { changeIntake, emptyIntake, hasContent, type IntakeForm } from './intake-state.ts';

const KEY = 'intake';
/** Pictures up to this size together travel with the draft; larger ones must be picked again. */
const MOST_PICTURE_BYTES = 3 * 1024 * 1024;

const pictureBytes = (form: IntakeForm) => form.parcels.flatMap((p) => p.items).flatMap((i) => i.photographs).reduce((sum, f) => sum + f.bytes.byteLength, 0);

/** Shape check of a kept draft: an older program may have written another form. */
function isForm(content: unknown): content is IntakeForm {
  const form = content as Partial<IntakeForm> | null;
  return typeof form === 'object' && form !== null && Array.isArray(form.parcels) && typeof form.lastKey === 'number' && typeof form.client === 'object';
}

function withoutPictures(form: IntakeForm): IntakeForm {
  return { ...form, parcels: form.parcels.map((p) => ({ ...p, items: p.items.map((i) => ({ ...i, photographs: [] })) })) };
}

const written = (form: IntakeForm): IntakeForm => (pictureBytes(form) > MOST_PICTURE_BYTES ? withoutPictures(form) : form);

/** The form with its draft: read back on opening, kept after each pause in the typing and when the window goes. */
export function useIntakeDraft() {
  const [form, change] = useReducer(changeIntake, undefined, () => emptyIntake());
  const [state, setState] = useState<'reading' | 'fresh' | 'kept'>('reading');
  const { failing, standsAt, forget } = useKeptDraft(KEY, state !== 'reading' && hasContent(form) ? form : null, written);

  useEffect(() => {
    let gone = false;
    void door.call('drafts.get', { key: KEY }).then((reply) => {
      if (gone) return;
      if (reply.ok && isForm(reply.value.content)) {
        standsAt(reply.value.content);
        change({ do: 'all', form: reply.value.content });
        setState('kept');
      } else setState('fresh');
    });
    return () => { gone = true; };
  }, [standsAt]);
  return { form, change, reading: state === 'reading', failing, restored: state === 'kept', picturesTooLarge: pictureBytes(form) > MOST_PICTURE_BYTES, forget };
}
