import { dayInZone } from '../../app/custody/calendar.ts';
import type { Signers } from '../../app/report/completeness/report-completeness.ts';
import { TEMPLATE_KIND_WORDS, type TemplateKind } from '../../app/report/sections/section.ts';
import type { Work } from './work-context.ts';

/**
 * Who may issue a report of a kind (ISO/IEC 17025:2017, 6.2.6 and 7.8.7). Where the laboratory has written down no authorisation at all,
 * the role alone decides; as soon as one is written, only those count that are named for the kind and have begun.
 */
export async function signersFor(kind: TemplateKind, issuer: string | null, zone: string, { casebook, stores, at }: Work): Promise<Signers> {
  const people = (await casebook.people.list()).filter((person) => person.active && person.roles.some((role) => role === 'appraiser' || role === 'manager'));
  const written = await stores.reportHouse.authorisations();
  const today = dayInZone(at, zone);
  const may = (id: string): boolean => written.length === 0 || written.some((one) => one.holderId === id && one.kinds.includes(kind) && one.since <= today);
  const me = issuer === null ? undefined : people.find((person) => person.id === issuer);
  const refusal = issuer === null || may(issuer) ? '' : `${me?.name ?? 'This person'} is not authorised to issue a report of the kind “${TEMPLATE_KIND_WORDS[kind]}”: the manager writes it down under House.`;
  return { mayIssue: people.filter((person) => may(person.id)).map((person) => person.name), refusal };
}
