import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import type { CustodyAction } from './custody-actions.ts';

/** Begins one kind of custody entry, by the button or its key. */
export function ActionButton({ action, disabled = false, onChoose }: { readonly action: CustodyAction; readonly disabled?: boolean; readonly onChoose: (action: CustodyAction) => void }) {
  useKey(action.keys, () => { onChoose(action); }, !disabled);
  return <Button keys={action.keys} isDisabled={disabled} onPress={() => { onChoose(action); }}>{action.name}</Button>;
}
