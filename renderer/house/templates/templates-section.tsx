import { useState } from 'react';
import type { TemplateDesk } from '../../../app/contract/report-house.ts';
import { TEMPLATE_KIND_WORDS } from '../../../app/report/sections/section.ts';
import { Button } from '../../look/button.tsx';
import { Trouble } from '../../look/empty.tsx';
import { useAsk } from '../../queries.ts';
import { TemplateSheet, type EditedTemplate } from './template-sheet.tsx';

/** Templates of reports: what each kind begins with. Every change is a new version, and the older ones stay readable. */
export function TemplatesSection() {
  const desk = useAsk('reportTemplates.desk', {}, { keep: true });
  const [edited, setEdited] = useState<EditedTemplate | null>(null);
  const supplied = desk.data?.supplied[0];
  const offered = desk.data?.templates.filter((one) => !one.content.withdrawn) ?? [];
  const withdrawn = desk.data?.templates.filter((one) => one.content.withdrawn) ?? [];
  const row = (one: TemplateDesk['templates'][number]) => (
    <li key={one.templateId} className="row gap12">
      <div className="grow">
        <p>{one.content.name}</p>
        <p className="quiet">{[TEMPLATE_KIND_WORDS[one.content.kind], one.version === 0 ? 'as it came' : `version ${one.version}`, one.drafts === 0 ? '' : one.drafts === 1 ? '1 draft begun' : `${one.drafts} drafts begun`].filter(Boolean).join(' · ')}</p>
      </div>
      <Button kind="quiet" aria-label={`Change the template ${one.content.name}`} onPress={() => { setEdited({ templateId: one.templateId, version: one.version, content: one.content, drafts: one.drafts, supplied: one.supplied }); }}>
        {one.content.withdrawn ? 'Offer again' : 'Change'}
      </Button>
    </li>
  );
  return (
    <section className="section protocols" aria-label="Templates of reports">
      <div className="row gap16"><h2 className="grow">Templates of reports</h2>
        <Button isDisabled={!supplied} onPress={() => { if (supplied) setEdited({ templateId: null, version: 0, content: { ...supplied.content, name: '' }, drafts: 0, supplied: false }); }}>Make a template</Button></div>
      {desk.isError ? <Trouble {...desk.error.failure} /> : null}
      <ul className="rows">{offered.map(row)}</ul>
      {withdrawn.length > 0 ? <details><summary>{withdrawn.length === 1 ? 'One is no longer offered' : `${withdrawn.length} are no longer offered`}</summary><ul className="rows">{withdrawn.map(row)}</ul></details> : null}
      <p className="quiet">A template is what a new report begins with. Drafts already begun stay with the version they began with, until somebody takes the new one in the draft; issued reports never change.</p>
      {edited && desk.data ? <TemplateSheet key={edited.templateId ?? 'new'} edited={edited} desk={desk.data} onClose={() => { setEdited(null); }} /> : null}
    </section>
  );
}

