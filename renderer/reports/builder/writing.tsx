import type { DraftChoices, WordRemark } from '../../../app/contract/report-drafts.ts';
import type { DraftContent } from '../../../app/report/draft/draft-content.ts';
import { STATEMENT_KINDS } from '../../../app/report/draft/statement-kinds.ts';
import { TEXT_KIND_INFO } from '../../../app/report/texts/text-kinds.ts';
import { Field } from '../../look/field.tsx';
import { WordList, WordNotes } from './word-notes.tsx';

type Props = { readonly content: DraftContent; readonly choices: DraftChoices; readonly words: readonly WordRemark[]; readonly onChange: (part: Partial<DraftContent>) => void };

/** What a person writes into one report: why it is amended, remarks, and what the laboratory's own texts do not fit. */
export function Writing({ content, choices, words, onChange }: Props) {
  return (
    <>
      {choices.amends ? (
        <section className="builder-part" aria-label="Amendment">
          <Field label={`Why revision ${choices.amends.revision} of ${choices.amends.number} is amended`} lines={2} value={content.reason} onChange={(reason) => { onChange({ reason }); }} hint="Printed on the new revision, with what differs." />
          <WordNotes words={words} field="reason" />
        </section>
      ) : null}
      <section className="builder-part" aria-label="Remarks">
        <Field label="Remarks" lines={4} value={content.remarks} onChange={(remarks) => { onChange({ remarks }); }} hint="Printed under Remarks, one paragraph a line." />
        <WordNotes words={words} field="remarks" />
      </section>
      <section className="builder-part" aria-label="Of this report alone">
        <h3>Of this report alone</h3>
        <p className="quiet">Left empty, the laboratory’s own text is printed.</p>
        {STATEMENT_KINDS.map((kind) => (
          <div key={kind}>
            <Field label={TEXT_KIND_INFO[kind].title} lines={2} value={content.statements[kind]} placeholder={choices.statements[kind] || 'the laboratory has no text'}
              onChange={(text) => { onChange({ statements: { ...content.statements, [kind]: text } }); }} />
            <WordNotes words={words} field={kind} />
          </div>
        ))}
      </section>
      <WordsElsewhere words={words.filter((word) => word.elsewhere)} />
    </>
  );
}

/** Words in texts that the draft does not hold: they are changed where those are kept. */
function WordsElsewhere({ words }: { readonly words: readonly WordRemark[] }) {
  if (words.length === 0) return null;
  return (
    <section className="builder-part" aria-label="Words in other texts">
      <h3>Words in other texts</h3>
      <p className="quiet">Printed from the house and the records, and changed there: the texts under House, the others on the case.</p>
      <WordList words={words} />
    </section>
  );
}
