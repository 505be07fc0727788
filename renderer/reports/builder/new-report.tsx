import { useState } from 'react';
import type { CaseView } from '../../../app/contract/cases.ts';
import type { TemplateKind } from '../../../app/report/sections/section.ts';
import { itemHeading } from '../../cases/item-words.ts';
import { useKey } from '../../keys/keymap.ts';
import { Button } from '../../look/button.tsx';
import { Choice } from '../../look/choice.tsx';
import { Dialog } from '../../look/dialog.tsx';
import { Trouble, Working } from '../../look/empty.tsx';
import { useAsk, useChange } from '../../queries.ts';
import { go } from '../../router.ts';

type Subject = { readonly kind: TemplateKind; readonly id: string | null; readonly name: string };

const WHOLE = 'case';

/** What of a case may be reported by itself: the whole, each piece and lot, each stone. */
function subjectsOf(c: CaseView): Subject[] {
  return [
    { kind: 'case', id: null, name: `The whole case ${c.number}` },
    ...c.parcels.flatMap((parcel) => parcel.items).flatMap((item): Subject[] => [
      ...(item.kind === 'loose' ? [] : [{ kind: item.kind === 'lot' ? 'lot' as const : 'piece' as const, id: item.id, name: itemHeading(item) }]),
      ...item.stones.map((stone) => ({ kind: 'single-stone' as const, id: stone.id, name: `Stone ${stone.label}${stone.shape ? `, ${stone.shape}` : ''}` })),
    ]),
  ];
}

/** Chooses what is reported and by which template, and begins the draft; what is there already is offered first. */
export function NewReport({ caseId: given, subjectId, onClose }: { readonly caseId?: string; readonly subjectId?: string; readonly onClose: () => void }) {
  const cases = useAsk('cases.list', given === undefined ? { text: '', state: 'all', limit: 1000, offset: 0 } : null);
  const [picked, setPicked] = useState('');
  const caseId = given ?? picked;
  const view = useAsk('cases.get', caseId === '' ? null : { caseId });
  const drafts = useAsk('reportDrafts.list', caseId === '' ? null : { caseId });
  const issued = useAsk('reports.list', caseId === '' ? null : { caseId });
  const templates = useAsk('reportTemplates.list', {});
  const [subject, setSubject] = useState(subjectId ?? WHOLE);
  const [template, setTemplate] = useState('');
  const create = useChange('reportDrafts.create');

  const subjects = view.data ? subjectsOf(view.data) : [];
  const chosen = subjects.find((one) => (one.id ?? WHOLE) === subject);
  const fitting = (templates.data ?? []).filter((one) => one.content.kind === chosen?.kind);
  const templateId = fitting.some((one) => one.templateId === template) ? template : chosen?.kind ?? '';
  const begun = chosen && drafts.data?.find((one) => one.subjectId === chosen.id && one.kind === chosen.kind);
  const labelOf = chosen?.kind === 'case' ? view.data?.number : view.data?.parcels.flatMap((parcel) => parcel.items).flatMap((item) => [item, ...item.stones]).find((one) => one.id === chosen?.id)?.label;
  const standing = issued.data?.find((report) => report.state === 'issued' && report.subject === labelOf);

  const begin = () => { if (chosen && !create.isPending) create.mutate({ caseId, kind: chosen.kind, subjectId: chosen.id, templateId }, { onSuccess: ({ draftId }) => { go({ view: 'report', id: draftId }); } }); };
  const amend = () => { if (standing) create.mutate({ amends: standing.id }, { onSuccess: ({ draftId }) => { go({ view: 'report', id: draftId }); } }); };
  useKey('Mod+Enter', begin);
  return (
    <Dialog title="New report" width={520} onClose={onClose}
      footer={<><Button onPress={onClose}>Not now</Button><Button kind="main" keys="Mod+Enter" isDisabled={!chosen || create.isPending} onPress={begin}>Begin the report</Button></>}>
      {given === undefined ? (
        <Choice label="Case" value={picked} placeholder="Choose a case" onChange={(id) => { setPicked(id); setSubject(WHOLE); }}
          options={(cases.data?.rows ?? []).map((row) => ({ value: row.id, label: `${row.number} · ${row.clientName}` }))} />
      ) : null}
      {caseId !== '' && view.isPending ? <Working what="Reading the case" /> : null}
      {view.isError ? <Trouble {...view.error.failure} /> : null}
      {view.data ? <Choice label="What is reported" value={subject} onChange={setSubject} options={subjects.map((one) => ({ value: one.id ?? WHOLE, label: one.name }))} /> : null}
      {fitting.length > 1 ? <Choice label="Template" value={templateId} onChange={setTemplate} options={fitting.map((one) => ({ value: one.templateId, label: one.content.name }))} /> : null}
      {begun ? <p className="row gap8"><span className="grow">A draft on this was begun by {begun.by}.</span><Button onPress={() => { go({ view: 'report', id: begun.id }); }}>Open that draft</Button></p> : null}
      {standing ? <p className="row gap8"><span className="grow">{standing.number}, revision {standing.revision}, stands for this. A correction is a new revision of it.</span><Button isPending={create.isPending} onPress={amend}>Amend it</Button></p> : null}
      {create.error ? <Trouble {...create.error.failure} /> : null}
      {given === undefined && cases.data?.rows.length === 0 ? <p className="second">No case yet: take one in first.</p> : null}
    </Dialog>
  );
}
