import type { HouseSettings } from '../../domain/house-settings.ts';
import { completeChoice } from '../templates/supplied-templates.ts';
import type { ReportTemplate } from '../templates/template.ts';
import type { DraftContent } from './draft-content.ts';

/** A draft as it begins from a template: nothing chosen, nothing written but the template's remarks. */
export function newDraft(template: ReportTemplate, subject: DraftContent['subject'], settings: Pick<HouseSettings, 'pageSize'>): DraftContent {
  const { content } = template;
  return {
    templateId: template.templateId, templateVersion: template.version, subject, title: content.title,
    pageSize: content.pageSize === 'house' ? settings.pageSize : content.pageSize, sections: completeChoice(content.sections, subject.kind),
    figures: null, photographs: null, remarks: content.remarks, statements: { place: '', conditions: '', sampling: '', external: '' }, notApplicable: {}, amends: null, reason: '',
  };
}
