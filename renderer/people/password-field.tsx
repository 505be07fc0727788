import { useState } from 'react';
import { Field } from '../look/field.tsx';

type Props = { readonly label: string; readonly value: string; readonly onChange: (value: string) => void; readonly error?: string | undefined; readonly refusal?: string | undefined; readonly hint?: string; readonly autoFocus?: boolean };

/** A line for a password, which says when the capital letters are locked. */
export function PasswordField({ hint, ...field }: Props) {
  const [caps, setCaps] = useState(false);
  const look = (event: { getModifierState(key: string): boolean }) => { setCaps(event.getModifierState('CapsLock')); };
  const said = [caps ? 'Capital letters are locked.' : '', hint ?? ''].filter((part) => part !== '').join(' ');
  return <div onKeyDown={look} onKeyUp={look}><Field {...field} type="password" {...(said === '' ? {} : { hint: said })} /></div>;
}
