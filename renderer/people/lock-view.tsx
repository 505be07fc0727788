import { useEffect } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useHouse } from '../house/house-context.tsx';
import { SignInForm } from './sign-in-form.tsx';
import './people.css';

/** Lies over everything while the window is locked; what was being done waits beneath, out of sight. */
export function LockView() {
  const { laboratory, status } = useHouse();
  const me = status.people.find((one) => one.id === status.me?.id) ?? null;
  useEffect(() => {
    document.body.classList.add('locked');
    return () => { document.body.classList.remove('locked'); };
  }, []);
  return (
    <ModalOverlay className="lock-veil" isOpen isDismissable={false} isKeyboardDismissDisabled>
      <Modal>
        <AriaDialog className="dialog sign-in-sheet lock" aria-label="This window is locked">
          <Heading slot="title" level={1}>{laboratory.name}</Heading>
          <p className="second">This window is locked. What was being done waits beneath.</p>
          <SignInForm people={status.people} showNames={laboratory.settings.showNames} start={me} onDone={() => undefined} />
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
