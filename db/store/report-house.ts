import { templateContent, type ReportTemplate, type TemplateContent } from '../../app/report/templates/template.ts';
import { suppliedTemplates } from '../../app/report/templates/supplied-templates.ts';
import { TEMPLATE_KINDS, type TemplateKind } from '../../app/report/sections/section.ts';
import { houseTexts } from '../../app/report/texts/house-texts.ts';
import type { HouseText, HouseTexts, TextKind } from '../../app/report/texts/text-kinds.ts';
import type { AuthorisationView, HouseTextVersion } from '../../app/contract/report-house.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { houseText, reportTemplate, signingAuthorisation } from '../schema/index.ts';
import { theLaboratory } from './laboratory.ts';

export type TemplateVersion = ReportTemplate & { readonly at: string; readonly by: string };

type PersonChange = Change & { readonly personId: string };

export type ReportHouseStore = {
  /** The text of each kind that new reports print. */
  texts(): Promise<HouseTexts>;
  /** Every version that was written, newest first. */
  textVersions(): Promise<HouseTextVersion[]>;
  writeText(change: PersonChange, input: { kind: TextKind; text: string; note: string }): Promise<HouseText>;
  /** The newest version of every template, the supplied kinds first, those no longer offered as well. */
  templates(): Promise<ReportTemplate[]>;
  /** A template in the version asked for; null where it was never written. */
  template(templateId: string, version: number): Promise<ReportTemplate | null>;
  /** Every version that was written, newest first. */
  templateVersions(): Promise<TemplateVersion[]>;
  /** How many drafts were begun with each template, by its id. */
  draftsByTemplate(): Promise<ReadonlyMap<string, number>>;
  /** A new template where `templateId` is null, else a new version. Null where there is none of that name. */
  saveTemplate(change: PersonChange, templateId: string | null, content: TemplateContent): Promise<ReportTemplate | null>;
  authorisations(): Promise<AuthorisationView[]>;
  authorise(change: PersonChange, input: { holderId: string; kinds: readonly TemplateKind[]; since: string; note: string }): Promise<AuthorisationView[]>;
};

export function currentTexts(db: ReadDb | WriteTx): HouseTexts {
  return houseTexts(db.all<HouseText>('SELECT kind, version, text FROM house_text'), theLaboratory(db).settings);
}

export function currentTemplates(db: ReadDb | WriteTx): ReportTemplate[] {
  const rows = db.all<{ id: string; version: number; content: string }>(`
    SELECT template_id AS id, version, content FROM report_template t
    WHERE version = (SELECT max(version) FROM report_template WHERE template_id = t.template_id) ORDER BY rowid`);
  const kept = rows.map((row): ReportTemplate => ({ templateId: row.id, version: row.version, content: templateContent.parse(JSON.parse(row.content)) }));
  const supplied = suppliedTemplates().map((one) => kept.find((other) => other.templateId === one.templateId) ?? one);
  return [...supplied, ...kept.filter((one) => !(TEMPLATE_KINDS as readonly string[]).includes(one.templateId))];
}

/** What each person may issue now: the newest row of each. */
export function currentAuthorisations(db: ReadDb | WriteTx): AuthorisationView[] {
  const rows = db.all<{ holderId: string; holder: string; kinds: string; since: string; note: string; at: string; by: string }>(`
    SELECT a.holder_id AS holderId, h.name AS holder, a.kinds, a.since, a.note, a.at, p.name AS by
    FROM signing_authorisation a JOIN person h ON h.id = a.holder_id JOIN person p ON p.id = a.person_id
    WHERE a.ordinal = (SELECT max(ordinal) FROM signing_authorisation WHERE holder_id = a.holder_id) ORDER BY h.name`);
  return rows.map((row) => ({ ...row, kinds: JSON.parse(row.kinds) as TemplateKind[] }));
}

export function createReportHouseStore(handle: StoreHandle, newId: () => string): ReportHouseStore {
  return {
    async texts() { return currentTexts(handle.read); },
    async textVersions() {
      return handle.read.all<HouseTextVersion>('SELECT t.kind, t.version, t.text, t.note, t.at, p.name AS by FROM house_text t JOIN person p ON p.id = t.person_id ORDER BY t.rowid DESC');
    },
    writeText: (change, { kind, text, note }) => handle.transact((tx) => {
      const version = currentTexts(tx)[kind].version + 1;
      tx.orm.insert(houseText).values({ id: newId(), kind, version, text, note, at: change.at, personId: change.personId }).run();
      appendAudit(tx, change, { subject: `text ${kind}`, caseId: null, content: { kind, version, text, note } });
      return { kind, version, text };
    }),
    async templates() { return currentTemplates(handle.read); },
    async template(templateId, version) {
      if (version === 0) return suppliedTemplates().find((one) => one.templateId === templateId) ?? null;
      const row = handle.read.get<{ content: string }>('SELECT content FROM report_template WHERE template_id = ? AND version = ?', [templateId, version]);
      return row === undefined ? null : { templateId, version, content: templateContent.parse(JSON.parse(row.content)) };
    },
    async templateVersions() {
      const rows = handle.read.all<{ templateId: string; version: number; content: string; at: string; by: string }>(`
        SELECT t.template_id AS templateId, t.version, t.content, t.at, p.name AS by FROM report_template t JOIN person p ON p.id = t.person_id ORDER BY t.rowid DESC`);
      return rows.map((row) => ({ ...row, content: templateContent.parse(JSON.parse(row.content)) }));
    },
    async draftsByTemplate() {
      const rows = handle.read.all<{ templateId: string; n: number }>("SELECT json_extract(content, '$.templateId') AS templateId, count(*) AS n FROM report_draft GROUP BY 1");
      return new Map(rows.map((row) => [row.templateId, row.n]));
    },
    saveTemplate: (change, templateId, content) => handle.transact((tx) => {
      const known = currentTemplates(tx).find((one) => one.templateId === templateId);
      if (templateId !== null && known === undefined) return null;
      const saved = { templateId: templateId ?? newId(), version: (known?.version ?? 0) + 1, content };
      tx.orm.insert(reportTemplate).values({ id: newId(), templateId: saved.templateId, version: saved.version, content: JSON.stringify(content), at: change.at, personId: change.personId }).run();
      appendAudit(tx, change, { subject: `template ${content.name}`, caseId: null, content: { template: saved.templateId, version: saved.version, content } });
      return saved;
    }),
    async authorisations() { return currentAuthorisations(handle.read); },
    authorise: (change, { holderId, kinds, since, note }) => handle.transact((tx) => {
      const ordinal = (tx.get<{ n: number | null }>('SELECT max(ordinal) AS n FROM signing_authorisation WHERE holder_id = ?', [holderId])?.n ?? 0) + 1;
      tx.orm.insert(signingAuthorisation).values({ id: newId(), holderId, ordinal, kinds: JSON.stringify(kinds), since, note, at: change.at, personId: change.personId }).run();
      appendAudit(tx, change, { subject: 'authorisation', caseId: null, content: { person: holderId, kinds: [...kinds], since, note } });
      return currentAuthorisations(tx);
    }),
  };
}
