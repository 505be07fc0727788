import { useKey } from '../keys/keymap.ts';
import { Button } from './button.tsx';
import { Sheet } from './sheet.tsx';

/** Asks before something that was entered is let go. */
export function LeaveSheet({ onStay, onLeave }: { readonly onStay: () => void; readonly onLeave: () => void }) {
  useKey('Mod+Enter', onStay);
  return (
    <Sheet title="Leave without keeping?" role="alertdialog" width={420} onClose={onStay} footer={(
      <>
        <Button kind="danger" onPress={onLeave}>Leave</Button>
        <Button kind="main" keys="Mod+Enter" autoFocus onPress={onStay}>Go on with it</Button>
      </>
    )}>
      <p>What was entered here is not kept yet. Leaving lets it go.</p>
    </Sheet>
  );
}
