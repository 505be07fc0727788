import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { useProgress } from '../start/use-progress.ts';

/** How far the check has come, and the way to stop it. */
export function Verifying({ task, onStop }: { readonly task: string; readonly onStop: () => void }) {
  const progress = useProgress(task);
  useKey('Escape', onStop);
  const share = progress === null ? 0 : Math.floor((100 * progress.done) / Math.max(1, progress.total));
  return (
    <div className="verifying">
      <progress max={100} value={share} aria-label="Verified" />
      <span className="second" role="status">{progress === null ? 'Recomputing every entry and every digest' : `${share} % of ${progress.total.toLocaleString('en')}: ${progress.note}`}</span>
      <Button keys="Escape" onPress={onStop}>Stop</Button>
    </div>
  );
}
