import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useSheetKeys } from '../keys/keymap.ts';
import { Button } from './button.tsx';
import './dialog.css';

/** A sheet over the work. Escape closes unless `onClose` decides otherwise; focus stays inside and returns. */
export function Dialog(p: {
  readonly title: string; readonly onClose: () => void; readonly children: ReactNode; readonly footer?: ReactNode; readonly width?: number; readonly role?: 'dialog' | 'alertdialog';
}) {
  useSheetKeys();
  return (
    <ModalOverlay className="dialog-veil" isOpen onOpenChange={(open) => { if (!open) p.onClose(); }} isDismissable={false}>
      <Modal className="dialog-frame" style={{ width: p.width ?? 560 }}>
        <AriaDialog className="dialog" role={p.role ?? 'dialog'}>
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
