import { useState } from 'react';
import type { DraftChoices } from '../../../app/contract/report-drafts.ts';
import type { DraftContent } from '../../../app/report/draft/draft-content.ts';
import { METHOD_WORDS } from '../../../app/evidence/sentences.ts';
import { TEMPLATE_KIND_WORDS } from '../../../app/report/sections/section.ts';
import { notKeptWords } from '../../drafts/not-kept-words.ts';
import { useKey } from '../../keys/keymap.ts';
import { Button } from '../../look/button.tsx';
import { Trouble, Working } from '../../look/empty.tsx';
import { focusSoon } from '../../look/focus-soon.ts';
import { useNotes } from '../../look/notes.tsx';
import { saveFile } from '../../look/save-file.ts';
import { useAsk } from '../../queries.ts';
import { go, placeAddress } from '../../router.ts';
import { View } from '../../shell/view.tsx';
import { CompletenessPanel, openPoints } from './completeness-panel.tsx';
import { DiscardSheet } from './discard-sheet.tsx';
import { IssueSheet } from './issue-sheet.tsx';
import { PickList } from './pick-list.tsx';
import { Preview } from './preview.tsx';
import { SectionList } from './section-list.tsx';
import { TemplateChoice } from './template-choice.tsx';
import { useReportDraft } from './use-report-draft.ts';
import { WordNotes } from './word-notes.tsx';
import { Writing } from './writing.tsx';
import './builder.css';

/** A report in the making: what is chosen and written at the left, its pages in the middle, what is missing at the right. */
export default function BuilderView({ draftId }: { readonly draftId: string }) {
  // Never from memory: what was kept since would be written over by what was read before.
  const draft = useAsk('reportDrafts.open', { draftId }, { briefly: true });
  // What was read stays: a draft that was just issued is gone, and the sheet over it still has to say so.
  if (draft.data === undefined) return <View title="Report">{draft.isError ? <div className="page page-sheet"><Trouble {...draft.error.failure} /></div> : <Working what="Reading the draft" />}</View>;
  return <Builder draftId={draftId} caseId={draft.data.caseId} first={draft.data.content} choices={draft.data.choices} />;
}

function Builder({ draftId, caseId, first, choices }: { readonly draftId: string; readonly caseId: string; readonly first: DraftContent; readonly choices: DraftChoices }) {
  const draft = useReportDraft(draftId, first);
  const { content, settled, change } = draft;
  const [sheet, setSheet] = useState<'issue' | 'discard' | null>(null);
  const notes = useNotes();
  const looked = useAsk('reportDrafts.look', settled.title.trim() === '' ? null : { draftId, content: settled }, { keep: true, briefly: true });
  const clauses = looked.data?.clauses ?? [];
  const words = looked.data?.words ?? [];
  const missing = clauses.filter((clause) => clause.state === 'missing');
  const points = openPoints(clauses);
  const current = content === settled && looked.isSuccess && !looked.isPlaceholderData;

  const save = () => { if (looked.data) { saveFile(looked.data.name, 'application/pdf', looked.data.pdf); notes.say(`Saved ${looked.data.name}`); } };
  const issue = async () => {
    if (!current) { notes.complain({ message: 'The pages are still being drawn.', next: 'Look at them first, then issue.' }); return; }
    if (missing.length > 0) {
      notes.complain({ message: `It can’t be issued yet: ${missing[0]?.missing[0] ?? ''}`, next: points === 1 ? 'This one point is open; it stands at the right with its clause.' : `${points} points are open; they stand at the right with their clauses.` });
      focusSoon('.builder-margin');
      return;
    }
    if (await draft.keep()) setSheet('issue');
  };
  useKey('D', save);
  useKey('Mod+Enter', () => { void issue(); }, sheet === null);

  const kind = TEMPLATE_KIND_WORDS[content.subject.kind];
  return (
    <View
      over={<><a className="mono" href={placeAddress({ view: 'case', id: caseId })}>{choices.caseNumber}</a> · {draft.failing ? <span className="warn">{notKeptWords(draft.failing)}</span> : 'a draft, kept as you write'}</>}
      title={choices.amends ? `${choices.amends.number}, revision ${choices.amends.revision + 1}` : `Report on ${choices.label}`} beside={kind}
      actions={(
        <>
          <Button kind="quiet" onPress={() => { setSheet('discard'); }}>Discard</Button>
          <Button keys="D" isDisabled={!looked.data} onPress={save}>Save a draft, PDF</Button>
          <Button kind="main" keys="Mod+Enter" onPress={() => { void issue(); }}>Issue the report</Button>
        </>
      )}>
      <div className="builder">
        <div className="builder-choose" role="region" aria-label="What the report says">
          <TemplateChoice content={content} onChange={change} />
          <WordNotes words={words} field="title" />
          <section className="builder-part" aria-label="Sections">
            <h3>Sections</h3>
            <SectionList sections={content.sections} titles={choices.sections} onChange={(sections) => { change({ sections }); }} />
            <p className="quiet">Arrow keys go through them; Space prints one or leaves it out; Alt with an arrow key moves it, and so does its handle.</p>
          </section>
          <PickList title="Figures" usualWord="what the findings rest on" none="No run of what is reported has a curve." chosen={content.figures} onChange={(figures) => { change({ figures }); }}
            picks={choices.figures.map((figure) => ({ id: figure.spectrumId, name: `${figure.stone}, ${METHOD_WORDS[figure.method]}, ${figure.run}: ${figure.name}`, usual: figure.decisive }))} />
          <PickList title="Photographs" usualWord="all" none="No photograph belongs to what is reported." chosen={content.photographs} onChange={(photographs) => { change({ photographs }); }}
            picks={choices.photographs.map((photograph) => ({ id: photograph.photographId, name: photograph.item ? `${photograph.item}: ${photograph.caption}` : photograph.caption, usual: true }))} />
          <Writing content={content} choices={choices} words={words} onChange={change} />
        </div>
        <Preview pdf={looked.data?.pdf ?? null} busy={!current && !looked.isError} />
        <aside className="builder-margin" tabIndex={-1}>
          {looked.isError ? <Trouble {...looked.error.failure} /> : null}
          {looked.isPending ? <Working what="Looking what is missing" /> : null}
          {choices.amends && looked.data ? (
            <section className="builder-part" aria-label="What differs">
              <h3>What differs from revision {choices.amends.revision}</h3>
              {looked.data.changes.length === 0 ? <p className="quiet">Nothing yet.</p> : <ul className="clauses">{looked.data.changes.map((line) => <li key={line}>{line}</li>)}</ul>}
            </section>
          ) : null}
          {looked.data ? <CompletenessPanel clauses={clauses} words={words} reasons={content.notApplicable} onReasons={(notApplicable) => { change({ notApplicable }); }} /> : null}
        </aside>
      </div>
      {sheet === 'issue' ? <IssueSheet draftId={draftId} words={words} onClose={() => { setSheet(null); }} onIssued={(report) => { notes.say(`${report.number}, revision ${report.revision}, is issued and frozen.`); go({ view: 'reports' }); }} /> : null}
      {sheet === 'discard' ? <DiscardSheet draftId={draftId} onClose={() => { setSheet(null); }} /> : null}
    </View>
  );
}
