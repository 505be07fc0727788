import type { ReactNode } from 'react';
import './shell.css';

/** Header and body that every view shares: a small line above, the heading, a quiet addition beside it, actions at the right. */
export function View(p: { readonly over?: ReactNode; readonly title: ReactNode; readonly beside?: ReactNode; readonly actions?: ReactNode; readonly children: ReactNode }) {
  return (
    <section className="view">
      <header className="view-head">
        <div className="grow">
          <p className="view-over one-line">{p.over}</p>
          <h1 className="view-title"><span className="one-line">{p.title}</span>{p.beside ? <> <span className="view-beside one-line">{p.beside}</span></> : null}</h1>
        </div>
        <div className="row gap8 view-actions">{p.actions}</div>
      </header>
      <div className="view-body">{p.children}</div>
    </section>
  );
}
