import type { CaseDocument } from '../../app/bundle/case-document.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { door } from '../door.ts';
import { Button } from '../look/button.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Glyph } from '../look/glyph.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { showMoment } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { sizeWords } from '../runs/incoming-file.ts';
import { STAGE_WORDS } from '../stones/stage-words.ts';
import { stoneWords } from '../stones/stone-words.ts';

/** A case of another laboratory as its own records say. `zone`: that laboratory's. */
export function BundleCase({ id, folder, zone }: { readonly id: string; readonly folder: string; readonly zone: string }) {
  const read = useAsk('bundles.case', { id, folder });
  const notes = useNotes();
  const save = async (path: string, mediaType: string) => {
    const reply = await door.call('bundles.file', { id, path });
    if (!reply.ok) notes.complain(reply.error);
    else saveFile(reply.value.name, mediaType, reply.value.bytes);
  };
  if (read.isError) return <Trouble {...read.error.failure} />;
  if (!read.data) return <Working what="Reading the case" />;
  const { case: record, stones, reports, rawRecords } = read.data;
  return (
    <article aria-label={record.number}>
      <h2><span className="mono">{record.number}</span> {record.client.name}</h2>
      <p className="second">{record.asks}</p>
      <ul className="bundle-items">
        {record.parcels.flatMap((parcel) => parcel.items).map((item) => (
          <li key={item.id}>
            <h3><span className="mono">{item.label}</span> {item.declared}</h3>
            <ul>{stones.filter((one) => one.stone.itemId === item.id).map((one) => <Stone key={one.stone.id} {...one} />)}</ul>
          </li>
        ))}
      </ul>
      {reports.length > 0 ? <h3>Reports</h3> : null}
      <ul className="bundle-files">
        {reports.map((one) => (
          <li key={one.id}>
            <span><span className="mono">{one.number}</span>, revision {one.revision}</span><span className="second">issued {showMoment(one.issuedAt, zone)} by {one.issuedBy}, {one.state}</span>
            <Button aria-label={`Save PDF of ${one.number}, revision ${one.revision}`} onPress={() => { void save(one.path, 'application/pdf'); }}>Save PDF</Button>
          </li>
        ))}
      </ul>
      {rawRecords.length > 0 ? <h3>Raw records</h3> : null}
      <ul className="bundle-files">
        {rawRecords.map((one) => (
          <li key={one.id}>
            <span className="one-line" title={`${one.name}, SHA-256 ${one.sha256}`}>{one.name}</span><span className="second">{one.runs.join(', ')} {sizeWords(one.size)}</span>
            <Button kind="quiet" aria-label={`Save ${one.name}`} onPress={() => { void save(one.path, one.mediaType); }}>Save</Button>
          </li>
        ))}
      </ul>
    </article>
  );
}

function Stone({ stone, conclusions, findings, runs }: CaseDocument['stones'][number]) {
  const last = conclusions.at(-1);
  return (
    <li className="bundle-stone">
      <span className="mono">{stone.label}</span>
      <span className="second">{stoneWords(stone)}</span>
      <span className="bundle-concluded">{stone.conclusion ? <><Glyph of={stone.conclusion} /> {CONCLUSION_WORDS[stone.conclusion]}, {STAGE_WORDS[stone.stage]}</> : STAGE_WORDS[stone.stage]}</span>
      <span className="quiet">runs {runs.length}, findings {findings.length}</span>
      {last ? <p className="second bundle-reasons">{last.reasons} <span className="quiet">({last.by})</span></p> : null}
    </li>
  );
}
