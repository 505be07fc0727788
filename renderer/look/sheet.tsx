import { useEffect, useRef, type ReactNode, type RefObject } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useSheetKeys } from '../keys/keymap.ts';
import { Button } from './button.tsx';
import './dialog.css';

/** Where typing begins on a sheet. Buttons are left out: one that closes the sheet must not be pressed by an Enter too many. */
const FIRST_FIELD = ':is(input, select, textarea):not(:disabled)';

export type SheetProps = {
  readonly title: string; readonly onClose: () => void; readonly children: ReactNode; readonly footer?: ReactNode; readonly width?: number; readonly role?: 'dialog' | 'alertdialog';
};

/** A sheet over the work. Escape closes unless `onClose` decides otherwise; focus starts in its first field, stays inside and returns. `at`: told the element that holds it. */
export function Sheet({ at, ...p }: SheetProps & { readonly at?: RefObject<HTMLElement | null> }) {
  useSheetKeys();
  const own = useRef<HTMLElement>(null);
  const sheet = at ?? own;
  useEffect(() => {
    const frame = requestAnimationFrame(() => {
      if (document.activeElement === sheet.current) sheet.current?.querySelector<HTMLElement>(`.dialog-body ${FIRST_FIELD}`)?.focus({ preventScroll: true });
    });
    return () => { cancelAnimationFrame(frame); };
  }, [sheet]);
  const { onClose } = p;
  useEffect(() => {
    // What had the focus may have gone from the sheet: then the key reaches nothing inside it, and Escape must close it all the same.
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || event.target !== document.body) return;
      if ([...document.querySelectorAll('.dialog')].at(-1) === sheet.current) onClose();
    };
    window.addEventListener('keydown', onKey);
    return () => { window.removeEventListener('keydown', onKey); };
  }, [onClose, sheet]);
  return (
    <ModalOverlay className="dialog-veil" isOpen onOpenChange={(open) => { if (!open) p.onClose(); }} isDismissable={false}>
      <Modal className="dialog-frame" style={{ width: p.width ?? 560 }}>
        <AriaDialog ref={sheet} className="dialog" role={p.role ?? 'dialog'}>
          <header className="dialog-head">
            <Heading slot="title" level={2}>{p.title}</Heading>
            <Button kind="quiet" keys="Escape" onPress={p.onClose} aria-label="Close">Close</Button>
          </header>
          <div className="dialog-body">{p.children}</div>
          {p.footer ? <footer className="dialog-foot">{p.footer}</footer> : null}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
