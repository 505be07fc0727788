import { useCallback, useEffect, useReducer, useRef, useState } from 'react';
import { door } from '../door.ts';
import { queryClient } from '../queries.ts';
import { changeIntake, emptyIntake, hasContent, type IntakeForm } from './intake-state.ts';

const KEY = 'intake';
const PAUSE_MS = 400;
/** While the program does not answer, the draft is offered to it again this often. */
const RETRY_MS = 2000;
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

/** The form with its draft: read back on opening, kept after each pause in the typing and when the window goes. */
export function useIntakeDraft() {
  const [form, change] = useReducer(changeIntake, undefined, () => emptyIntake());
  const [state, setState] = useState<'reading' | 'fresh' | 'kept'>('reading');
  const latest = useRef(form);
  const kept = useRef<IntakeForm | null>(null);
  const underway = useRef<IntakeForm | null>(null);
  const [failing, setFailing] = useState(false);
  useEffect(() => { latest.current = form; }, [form]);

  useEffect(() => {
    let gone = false;
    void door.call('drafts.get', { key: KEY }).then((reply) => {
      if (gone) return;
      if (reply.ok && isForm(reply.value.content)) {
        kept.current = reply.value.content;
        change({ do: 'all', form: reply.value.content });
        setState('kept');
      } else setState('fresh');
    });
    return () => { gone = true; };
  }, []);

  const save = useCallback(() => {
    const now = latest.current;
    if (now === kept.current || now === underway.current || !hasContent(now)) return;
    underway.current = now;
    void door.call('drafts.put', { key: KEY, content: pictureBytes(now) > MOST_PICTURE_BYTES ? withoutPictures(now) : now }).then((reply) => {
      if (underway.current === now) underway.current = null;
      setFailing(!reply.ok);
      if (!reply.ok) return;
      kept.current = now;
      void queryClient.invalidateQueries({ queryKey: ['bench.today'], refetchType: 'none' });
    });
  }, []);

  useEffect(() => {
    if (state === 'reading') return undefined;
    const timer = setTimeout(save, PAUSE_MS);
    return () => { clearTimeout(timer); };
  }, [form, state, save]);

  useEffect(() => {
    if (!failing) return undefined;
    const timer = setInterval(save, RETRY_MS);
    return () => { clearInterval(timer); };
  }, [failing, save]);

  useEffect(() => {
    window.addEventListener('pagehide', save);
    window.addEventListener('blur', save);
    return () => { window.removeEventListener('pagehide', save); window.removeEventListener('blur', save); save(); };
  }, [save]);

  const forget = async () => {
    // What stands in the form now must not be written again when the view goes.
    kept.current = latest.current;
    await door.call('drafts.remove', { key: KEY });
    // The bench speaks of kept drafts.
    await queryClient.invalidateQueries({ queryKey: ['bench.today'] });
  };
  return { form, change, reading: state === 'reading', failing, restored: state === 'kept', picturesTooLarge: pictureBytes(form) > MOST_PICTURE_BYTES, forget };
}
