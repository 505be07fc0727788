import type { LaboratoryView } from '../../app/contract/casebook.ts';
import type { Output } from '../../app/contract/index.ts';
import { Mark } from '../look/mark.tsx';
import { SignInForm } from './sign-in-form.tsx';
import './people.css';

/** The page before anybody signed in: the laboratory, a name, a password. */
export function SignInView({ laboratory, people }: { readonly laboratory: LaboratoryView; readonly people: Output<'casebook.status'>['people'] }) {
  const active = people.filter((one) => one.active);
  return (
    <main className="sign-in-page">
      <div className="sign-in-sheet">
        <p className="start-brand"><Mark size={26} />Culet</p>
        <h1>{laboratory.name}</h1>
        <p className="second">Who works here?</p>
        <SignInForm people={active} showNames={laboratory.settings.showNames} start={active.length === 1 && laboratory.settings.showNames ? active[0]! : null} onDone={() => undefined} />
      </div>
    </main>
  );
}
