import { useState } from 'react';
import type { LaboratoryView } from '../../app/contract/casebook.ts';
import { parseSieves, sievesText, sieveTable } from '../../app/lots/sieve-table.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';

/** The numbers of lots and of measured stones that are the laboratory's own decision. */
export function LotsForm({ laboratory }: { readonly laboratory: LaboratoryView }) {
  const { name, address, zone, logo, settings } = laboratory;
  const [confidence, setConfidence] = useState(String(settings.lotConfidence));
  const [reading, setReading] = useState(String(settings.readingMm));
  const [gauge, setGauge] = useState(String(settings.dimensionUncertaintyMm));
  const [sieves, setSieves] = useState(sievesText(settings.sieves));
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const save = useChange('laboratory.save');
  const notes = useNotes();
  const submit = () => {
    const percent = readNumber(confidence) ?? Number.NaN;
    const mm = readNumber(reading) ?? Number.NaN;
    const loose = readNumber(gauge) ?? Number.NaN;
    const plates = sieveTable.safeParse(parseSieves(sieves));
    const faults: Record<string, string> = {};
    if (!(percent >= 50 && percent <= 99.99)) faults['confidence'] = 'Write a number between 50 and 99.99.';
    if (!(mm >= 0.005 && mm <= 0.5)) faults['reading'] = 'Write a number between 0.005 and 0.5.';
    if (!(loose >= 0 && loose <= 0.5)) faults['gauge'] = 'Write a number between 0 and 0.5.';
    if (!plates.success) faults['sieves'] = parseSieves(sieves) === undefined ? 'Write each plate and its hole in millimetres, for instance “6.5 1.80, 7 1.90”.' : plates.error.issues[0]?.message ?? 'Write the plates from small to large.';
    setOwn(faults);
    if (!plates.success || Object.keys(faults).length > 0) return;
    save.mutate({ name, address, zone, logo: logo as { mediaType: 'image/png' | 'image/jpeg'; bytes: Uint8Array } | null, settings: { ...settings, lotConfidence: percent, readingMm: mm, dimensionUncertaintyMm: loose, sieves: plates.data } }, { onSuccess: () => { notes.say('Kept.'); } });
  };
  return (
    <section className="section protocols" aria-label="Lots and measures">
      <h2>Lots and measures</h2>
      <div className="fields-two">
        <Field label="Mounted, a reading is good to" mono suffix="mm" value={reading} onChange={setReading} error={own['reading']} />
        <Field label="Loose, a reading is good to" mono suffix="mm" value={gauge} onChange={setGauge} error={own['gauge']} />
        <Field label="Confidence of plans and statements" mono suffix="%" value={confidence} onChange={setConfidence} error={own['confidence']} />
      </div>
      <Field label="Sieve plates and their holes, mm" lines={4} value={sieves} onChange={setSieves} error={own['sieves']} />
      <p className="quiet">Confidence, plates and the reading of a mounted stone are common practice, no source: measure the holes of your own plates. A reading is good to its standard uncertainty; that of a loose stone is in the certificate of your gauge, and reports print it after ± beside dimensions. At 0 nothing is printed.</p>
      {save.error ? <Trouble {...save.error.failure} /> : null}
      <div><Button kind="main" isPending={save.isPending} onPress={submit}>Keep these</Button></div>
    </section>
  );
}
