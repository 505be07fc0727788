import type { ReactNode } from 'react';
import { Button as AriaButton, type ButtonProps } from 'react-aria-components';
import { Keys } from './keys.tsx';
import './button.css';

type Props = Omit<ButtonProps, 'children'> & {
  readonly kind?: 'main' | 'plain' | 'quiet' | 'danger';
  /** Shown beside the word, for instance "T" or "Mod+Enter". */
  readonly keys?: string;
  readonly children: ReactNode;
};

/** One main action a view; everything else is plain. While what it began goes on it is `isPending`, not disabled: a disabled button loses the focus, and with it every key. */
export function Button({ kind = 'plain', keys, children, className, ...rest }: Props) {
  return (
    <AriaButton {...rest} className={`button button-${kind} ${typeof className === 'string' ? className : ''}`}>
      <span>{children}</span>
      {keys ? <Keys of={keys} /> : null}
    </AriaButton>
  );
}
