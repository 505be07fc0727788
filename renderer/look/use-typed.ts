import { useEffect, useRef, type RefObject } from 'react';

type TextField = HTMLInputElement | HTMLTextAreaElement;

/** What is chosen or ticked is quickly chosen again; what is typed is work. */
const NOT_TYPED = ['checkbox', 'radio', 'file', 'password', 'button', 'submit', 'range'];
const isTextField = (element: EventTarget | null): element is TextField =>
  element instanceof HTMLTextAreaElement || (element instanceof HTMLInputElement && !NOT_TYPED.includes(element.type));

/**
 * Whether a field inside `of` reads otherwise than when it was first entered. Fields in a part that keeps its own, marked `data-kept-apart`, are left out.
 * A field is looked at from the first time it has the focus: what was filled in for a person before that is not theirs.
 */
export function useTyped(of: RefObject<HTMLElement | null>): () => boolean {
  const first = useRef(new Map<TextField, string>());
  useEffect(() => {
    const element = of.current;
    if (element === null) return undefined;
    const note = (field: EventTarget | null) => {
      if (isTextField(field) && !first.current.has(field) && field.closest('[data-kept-apart]') === null) first.current.set(field, field.value);
    };
    const entered = (event: FocusEvent) => { note(event.target); };
    if (element.contains(document.activeElement)) note(document.activeElement);
    element.addEventListener('focusin', entered);
    return () => { element.removeEventListener('focusin', entered); };
  }, [of]);
  return () => [...first.current].some(([field, value]) => field.isConnected && field.value.trim() !== value.trim());
}
