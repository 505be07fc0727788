import { useRef, useState } from 'react';
import { LeaveSheet } from './leave-sheet.tsx';
import { Sheet, type SheetProps } from './sheet.tsx';
import { useTyped } from './use-typed.ts';

/** A sheet over the work. `asks`: where something was typed on it, Escape and Close ask before they let it go. */
export function Dialog({ asks = false, ...sheet }: SheetProps & { readonly asks?: boolean }) {
  const at = useRef<HTMLElement>(null);
  const typed = useTyped(at);
  const [leaving, setLeaving] = useState(false);
  return (
    <>
      <Sheet {...sheet} at={at} onClose={() => { if (asks && typed()) setLeaving(true); else sheet.onClose(); }} />
      {leaving ? <LeaveSheet onStay={() => { setLeaving(false); }} onLeave={sheet.onClose} /> : null}
    </>
  );
}
