import { useEffect, useState } from 'react';
import type { TemplateDesk } from '../../../app/contract/report-house.ts';
import { TEMPLATE_KINDS, TEMPLATE_KIND_WORDS, type TemplateKind } from '../../../app/report/sections/section.ts';
import type { TemplateContent } from '../../../app/report/templates/template.ts';
import { useKey } from '../../keys/keymap.ts';
import { Button } from '../../look/button.tsx';
import { Check, Choice, Segmented } from '../../look/choice.tsx';
import { Dialog } from '../../look/dialog.tsx';
import { Trouble } from '../../look/empty.tsx';
import { Field } from '../../look/field.tsx';
import { useNotes } from '../../look/notes.tsx';
import { useAsk, useChange } from '../../queries.ts';
import { Preview } from '../../reports/builder/preview.tsx';
import { SectionList } from '../../reports/builder/section-list.tsx';
import { useHouse } from '../house-context.tsx';
import { leftOutClauses } from './left-out.ts';
import { TemplateVersions } from './template-versions.tsx';

export type EditedTemplate = { readonly templateId: string | null; readonly version: number; readonly content: TemplateContent; readonly drafts: number; readonly supplied: boolean };

/** Pages are drawn once the writing pauses for this long. */
const PAUSE_MS = 500;

function useSettled<Value>(value: Value): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => { setSettled(value); }, PAUSE_MS);
    return () => { clearTimeout(timer); };
  }, [value]);
  return settled;
}

/** What a version that is kept now does to the drafts there are. */
function draftsNote({ templateId, drafts }: EditedTemplate): string {
  if (templateId === null) return 'It is offered for new reports; drafts already begun stay with their template.';
  if (drafts === 0) return 'New reports begin with it. No draft was begun with this template.';
  return `New reports begin with it. ${drafts === 1 ? 'The draft already begun stays' : `The ${drafts} drafts already begun stay`} as they are: sections, title, paper, logo and figures of the version they began with. The draft itself offers to take the new one.`;
}

/** Makes or changes a template beside the pages it would make. */
export function TemplateSheet({ edited, desk, onClose }: { readonly edited: EditedTemplate; readonly desk: TemplateDesk; readonly onClose: () => void }) {
  const { laboratory } = useHouse();
  const [content, setContent] = useState<TemplateContent>({ ...edited.content, withdrawn: false });
  const [figures, setFigures] = useState(edited.content.figuresPerStone === null ? '' : String(edited.content.figuresPerStone));
  const settled = useSettled(content);
  const complete = settled.title.trim() !== '' && settled.sections.some((entry) => entry.on);
  const looked = useAsk('reportTemplates.look', complete ? { content: { ...settled, name: settled.name.trim() || 'New template' } } : null, { keep: true, briefly: true });
  const save = useChange('reportTemplates.save');
  const notes = useNotes();
  const change = (part: Partial<TemplateContent>) => { setContent((now) => ({ ...now, ...part })); };
  const came = desk.supplied.find((one) => one.content.kind === content.kind)?.content;
  const wrongFigures = figures.trim() === '' || /^(?:\d|1[0-2])$/.test(figures.trim()) ? undefined : 'Write a number from 0 to 12, or nothing.';
  const wrong = save.error?.failure.fields ?? {};
  const open = leftOutClauses(content.sections, desk.sections);

  const kind = (next: TemplateKind) => { const other = desk.supplied.find((one) => one.content.kind === next); if (other) change({ kind: next, sections: other.content.sections }); };
  const backToSupplied = () => { if (came) { setContent({ ...came, name: edited.supplied ? came.name : content.name }); setFigures(''); } };
  const keep = (withdrawn: boolean) => {
    if (wrongFigures !== undefined || save.isPending) return;
    save.mutate({ templateId: edited.templateId, content: { ...content, withdrawn } }, {
      onSuccess: (kept) => { notes.say(withdrawn ? `${kept.content.name} is no longer offered.` : `${kept.content.name}, version ${kept.version}, is kept.`); onClose(); },
    });
  };
  useKey('Mod+Enter', () => { keep(false); });

  return (
    <Dialog asks title={edited.templateId === null ? 'A new template' : `The template ${edited.content.name}`} width={1180} onClose={onClose}
      footer={(
        <>
          {edited.templateId !== null && !edited.supplied && !edited.content.withdrawn ? <Button kind="danger" isPending={save.isPending} onPress={() => { keep(true); }}>Withdraw it</Button> : null}
          <Button onPress={backToSupplied}>As it came</Button>
          <Button kind="main" keys="Mod+Enter" isPending={save.isPending} onPress={() => { keep(false); }}>Keep as version {edited.templateId === null ? 1 : edited.version + 1}</Button>
        </>
      )}>
      <div className="template-sheet">
        <div className="template-choose">
          <p className="second">{draftsNote(edited)}</p>
          {save.error && Object.keys(wrong).length === 0 ? <Trouble {...save.error.failure} /> : null}
          <Field label="Name" value={content.name} onChange={(name) => { change({ name }); }} error={wrong['content.name']} />
          {edited.templateId === null
            ? <Choice<TemplateKind> label="For reports on a" value={content.kind} onChange={kind} options={TEMPLATE_KINDS.map((value) => ({ value, label: TEMPLATE_KIND_WORDS[value] }))} />
            : <p className="second">For reports on a {TEMPLATE_KIND_WORDS[content.kind]}.</p>}
          <Field label="Title" value={content.title} onChange={(title) => { change({ title }); }} error={content.title.trim() === '' ? 'A report needs a title.' : undefined} />
          <div className="row gap12"><span className="label">Paper</span><Segmented label="Paper" value={content.pageSize} onChange={(pageSize) => { change({ pageSize }); }}
            options={[{ value: 'house', label: `as the house (${laboratory.settings.pageSize})` }, { value: 'A4', label: 'A4' }, { value: 'Letter', label: 'Letter' }]} /></div>
          <Check label={laboratory.logo ? 'Print the logo' : 'Print the logo, once the laboratory has one'} checked={content.logo} onChange={(logo) => { change({ logo }); }} />
          <Field label="Figures of a stone, at most" mono value={figures} onChange={(text) => { setFigures(text); if (/^\s*(?:\d|1[0-2])?\s*$/.test(text)) change({ figuresPerStone: text.trim() === '' ? null : Number(text) }); }} error={wrongFigures} hint="Nothing: all that the findings rest on." />
          <h3>Sections</h3>
          <SectionList sections={content.sections} titles={desk.sections} onChange={(sections) => { change({ sections }); }} />
          <p className="quiet">Arrow keys go through them; Space prints one or leaves it out; Alt with an arrow key moves it, and so does its handle.</p>
          {open.length > 0 ? <p className="warn">Left out, and asked for by ISO/IEC 17025:2017: {open.map((one) => `${one.clause} (${one.section})`).join(', ')}. Each report would have to say why it does not apply.</p> : null}
          <Field label="Remarks it begins with" lines={4} value={content.remarks} onChange={(remarks) => { change({ remarks }); }} error={wrong['content.remarks']} hint="Standard words of this template; whoever writes the report may change them." />
          <p className="quiet">What all reports say – scope, disclaimer, methods – stands under “Texts of reports”.</p>
          <TemplateVersions versions={desk.versions.filter((one) => one.templateId === edited.templateId)} zone={laboratory.zone} onTake={(older) => { setContent({ ...older, withdrawn: false }); setFigures(older.figuresPerStone === null ? '' : String(older.figuresPerStone)); }} />
        </div>
        {looked.data?.of === null
          ? <p className="second">No case has a {TEMPLATE_KIND_WORDS[content.kind]} yet. As soon as one is taken in, its pages are shown here as this template would print them.</p>
          : <div><p className="quiet">{looked.data?.of ? `With the records of ${looked.data.of}` : ''}</p>{looked.isError ? <Trouble {...looked.error.failure} /> : null}<Preview of="the template" pdf={looked.data?.pdf ?? null} busy={content !== settled || looked.isFetching} /></div>}
      </div>
    </Dialog>
  );
}
