import type { TemplateDesk } from '../../../app/contract/report-house.ts';
import type { TemplateContent } from '../../../app/report/templates/template.ts';
import { Button } from '../../look/button.tsx';
import { showMoment } from '../../look/time.ts';

/** Versions of one template, newest first. An older one is taken into the form, and kept from there as the next. */
export function TemplateVersions({ versions, zone, onTake }: { readonly versions: TemplateDesk['versions']; readonly zone: string; readonly onTake: (content: TemplateContent) => void }) {
  if (versions.length === 0) return null;
  return (
    <details>
      <summary>{versions.length === 1 ? 'One version' : `${versions.length} versions`}</summary>
      <ul className="rows">
        {versions.map((one) => (
          <li key={one.version} className="row gap8">
            <span className="grow">Version {one.version}, {showMoment(one.at, zone)}, {one.by}: {one.content.withdrawn ? 'withdrawn' : `“${one.content.title}”, ${one.content.sections.filter((entry) => entry.on).length} sections`}</span>
            <Button kind="quiet" aria-label={`Take version ${one.version} into the form`} onPress={() => { onTake(one.content); }}>Take it</Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
