import type { ReactNode } from 'react';
import './states.css';

/** An empty place says what to do first. */
export function Empty({ title, children }: { readonly title: string; readonly children?: ReactNode }) {
  return <div className="empty"><h3>{title}</h3>{children ? <div className="second">{children}</div> : null}</div>;
}

/** Shown only when something takes longer than half a second. */
export function Working({ what }: { readonly what: string }) {
  return <p className="working" role="status">{what} …</p>;
}

/** A failure in words: what happened and what to do next. */
export function Trouble({ message, next }: { readonly message: string; readonly next: string }) {
  return <div className="trouble" role="alert"><p>{message}</p><p className="second">{next}</p></div>;
}
