import { newDraft } from '../../../app/report/draft/new-draft.ts';
import type { DraftContent } from '../../../app/report/draft/draft-content.ts';
import { useHouse } from '../../house/house-context.tsx';
import { versionWords } from '../../house/templates/version-words.ts';
import { Button } from '../../look/button.tsx';
import { Choice, Segmented } from '../../look/choice.tsx';
import { Field } from '../../look/field.tsx';
import { useAsk } from '../../queries.ts';

/** Template, title and paper. Another template brings its sections, title and paper; what was written and picked stays. */
export function TemplateChoice({ content, onChange }: { readonly content: DraftContent; readonly onChange: (part: Partial<DraftContent>) => void }) {
  const { laboratory } = useHouse();
  const templates = (useAsk('reportTemplates.list', {}, { keep: true }).data ?? []).filter((one) => one.content.kind === content.subject.kind);
  const take = (templateId: string) => {
    const template = templates.find((one) => one.templateId === templateId);
    if (!template) return;
    const { templateVersion, sections, title, pageSize } = newDraft(template, content.subject, laboratory.settings);
    onChange({ templateId, templateVersion, sections, title, pageSize });
  };
  const begun = templates.find((one) => one.templateId === content.templateId);
  return (
    <section className="builder-part" aria-label="Template">
      <Choice label="Template" value={content.templateId} onChange={take} options={[...(templates.length > 0 && begun === undefined ? [{ value: content.templateId, label: 'one that is no longer offered' }] : []), ...templates.map((one) => ({ value: one.templateId, label: one.content.name }))]} />
      {begun && begun.version !== content.templateVersion ? (
        <p className="row gap8"><span className="grow">Begun with {versionWords(content.templateVersion)}; {versionWords(begun.version)} is kept in the House since. This draft stays as it is.</span>
          <Button onPress={() => { take(begun.templateId); }}>Take {versionWords(begun.version)}</Button></p>
      ) : null}
      <Field label="Title" value={content.title} onChange={(title) => { onChange({ title }); }} error={content.title.trim() === '' ? 'A report needs a title.' : undefined} />
      <div className="row gap12"><span className="label">Paper</span><Segmented label="Paper" value={content.pageSize} onChange={(pageSize) => { onChange({ pageSize }); }} options={[{ value: 'A4', label: 'A4' }, { value: 'Letter', label: 'Letter' }]} /></div>
    </section>
  );
}
