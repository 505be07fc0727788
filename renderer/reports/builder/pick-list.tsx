import { Check, Segmented } from '../../look/choice.tsx';

export type Pick = { readonly id: string; readonly name: string; readonly usual: boolean };

/** Which of several are printed: the usual ones (null), or those that are ticked, in the order of the list. */
export function PickList(p: {
  readonly title: string; readonly usualWord: string; readonly picks: readonly Pick[]; readonly none: string;
  readonly chosen: readonly string[] | null; readonly onChange: (chosen: string[] | null) => void;
}) {
  const usual = p.picks.filter((pick) => pick.usual).map((pick) => pick.id);
  return (
    <section className="builder-part" aria-label={p.title}>
      <h3>{p.title}</h3>
      {p.picks.length === 0 ? <p className="quiet">{p.none}</p> : (
        <>
          <div><Segmented label={p.title} value={p.chosen === null ? 'usual' : 'own'} onChange={(value) => { p.onChange(value === 'usual' ? null : usual); }}
            options={[{ value: 'usual', label: p.usualWord }, { value: 'own', label: 'these' }]} /></div>
          {p.chosen === null ? null : (
            <div className="stack gap4 pick-list">
              {p.picks.map((pick) => (
                <Check key={pick.id} label={pick.name} checked={p.chosen?.includes(pick.id) ?? false}
                  onChange={(on) => { p.onChange(p.picks.map((one) => one.id).filter((id) => (id === pick.id ? on : p.chosen?.includes(id)))); }} />
              ))}
            </div>
          )}
        </>
      )}
    </section>
  );
}
