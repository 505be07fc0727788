import { useState } from 'react';
import type { LaboratoryView } from '../../app/contract/casebook.ts';
import { formatCarat, formatGram, parseCarat, parseGram } from '../../app/domain/weight.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice, Segmented } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { showMoment } from '../look/time.ts';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';
import { LogoField, type Logo } from './logo-field.tsx';
import { ZONES } from './zones.ts';

/** What stands at the head of every paper, and the numbers that are the laboratory's own decision. */
export function LaboratoryForm({ laboratory }: { readonly laboratory: LaboratoryView }) {
  const s = laboratory.settings;
  const [name, setName] = useState(laboratory.name);
  const [address, setAddress] = useState(laboratory.address);
  const [zone, setZone] = useState(laboratory.zone);
  const [logo, setLogo] = useState<Logo | null>(laboratory.logo as Logo | null);
  const [pageSize, setPageSize] = useState(s.pageSize);
  const [carat, setCarat] = useState(formatCarat(s.weightToleranceCarat));
  const [gram, setGram] = useState(formatGram(s.weightToleranceGram));
  const [balanceCarat, setBalanceCarat] = useState(formatCarat(s.balanceUncertaintyCarat));
  const [balanceGram, setBalanceGram] = useState(formatGram(s.balanceUncertaintyGram));
  const [twoPhonon, setTwoPhonon] = useState(String(s.twoPhononCoefficient));
  const [days, setDays] = useState(String(s.dueSoonDays));
  const [attach, setAttach] = useState(String(s.attachMegabytes));
  const [assumed, setAssumed] = useState(String(s.assumedNotNatural));
  const [idle, setIdle] = useState(String(s.idleMinutes));
  const [showNames, setShowNames] = useState(s.showNames);
  const [secondReadsFirst, setSecondReadsFirst] = useState(s.secondReadsFirst);
  const [readers, setReaders] = useState(s.readers);
  const [places, setPlaces] = useState(s.places.join('\n'));
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const save = useChange('laboratory.save');
  const notes = useNotes();
  useFocusWrong('.house-laboratory', own, save.error);
  const wrong: Readonly<Record<string, string>> = { ...save.error?.failure.fields, ...own };

  const submit = () => {
    const ct = parseCarat(carat);
    const g = parseGram(gram);
    const balanceCt = parseCarat(balanceCarat);
    const balanceG = parseGram(balanceGram);
    const alpha = readNumber(twoPhonon);
    const soon = readNumber(days);
    const megabytes = readNumber(attach);
    const faults: Record<string, string> = {};
    if (!ct.ok) faults['carat'] = ct.error;
    if (!g.ok) faults['gram'] = g.error;
    if (!balanceCt.ok) faults['balanceCarat'] = balanceCt.error;
    if (!balanceG.ok) faults['balanceGram'] = balanceG.error;
    if (alpha === undefined || Number.isNaN(alpha)) faults['twoPhonon'] = 'Write a number between 10 and 14.';
    if (soon === undefined || Number.isNaN(soon)) faults['days'] = 'Write a number of days.';
    if (megabytes === undefined || !Number.isInteger(megabytes) || megabytes < 0 || megabytes > 200) faults['attach'] = 'Write a whole number from 0 to 200.';
    const minutes = readNumber(idle);
    if (minutes === undefined || Number.isNaN(minutes) || minutes < 1 || minutes > 120) faults['idle'] = 'Write a number of minutes from 1 to 120.';
    const share = readNumber(assumed);
    if (share === undefined || Number.isNaN(share) || share < 0 || share > 100) faults['assumed'] = 'Write a number from 0 to 100.';
    setOwn(faults);
    if (!ct.ok || !g.ok || !balanceCt.ok || !balanceG.ok || Object.keys(faults).length > 0) return;
    const settings = { ...s, pageSize, weightToleranceCarat: ct.value, weightToleranceGram: g.value, balanceUncertaintyCarat: balanceCt.value, balanceUncertaintyGram: balanceG.value, twoPhononCoefficient: alpha ?? s.twoPhononCoefficient, dueSoonDays: Math.round(soon ?? s.dueSoonDays), attachMegabytes: megabytes ?? s.attachMegabytes, idleMinutes: Math.round(minutes ?? s.idleMinutes), assumedNotNatural: share ?? s.assumedNotNatural, showNames, secondReadsFirst, readers, places: linesOf(places) };
    save.mutate({ name, address, zone, logo, settings }, { onSuccess: () => { notes.say('Kept.'); } });
  };
  return (
    <form className="house-laboratory" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <h2>Laboratory</h2>
      <Field label="Name, as on its reports" value={name} onChange={setName} error={wrong['name']} />
      <Field label="Address" lines={3} value={address} onChange={setAddress} error={wrong['address']} />
      <div className="fields-two">
        <Choice label="Time zone" value={zone} onChange={setZone} options={ZONES.map((z) => ({ value: z, label: z.replaceAll('_', ' ') }))} error={wrong['zone']} />
        <LogoField logo={logo} onChange={setLogo} />
      </div>
      <h2>Settings</h2>
      <div className="row gap12"><span className="label">Paper</span><Segmented label="Paper" value={pageSize} onChange={setPageSize} options={[{ value: 'A4', label: 'A4' }, { value: 'Letter', label: 'Letter' }]} /></div>
      <div className="fields-four house-settings">
        <Field label="Weights may differ by" mono suffix="ct" value={carat} onChange={setCarat} error={wrong['carat']} />
        <Field label="Pieces may differ by" mono suffix="g" value={gram} onChange={setGram} error={wrong['gram']} />
        <Field label="Weights uncertain by" mono suffix="ct" value={balanceCarat} onChange={setBalanceCarat} error={wrong['balanceCarat'] ?? wrong['settings.balanceUncertaintyCarat']} />
        <Field label="Pieces uncertain by" mono suffix="g" value={balanceGram} onChange={setBalanceGram} error={wrong['balanceGram'] ?? wrong['settings.balanceUncertaintyGram']} />
      </div>
      <p className="quiet">Weight tolerances are common practice, no source. The standard uncertainty of a weight is in the certificate of your balance; reports print it after ±. At 0 nothing is printed beside a weight.</p>
      <div className="fields-four house-settings">
        <Field label="Two-phonon coefficient" mono suffix="cm⁻¹" value={twoPhonon} onChange={setTwoPhonon} error={wrong['twoPhonon'] ?? wrong['settings.twoPhononCoefficient']} />
        <Field label="Due soon from" mono suffix="days" value={days} onChange={setDays} error={wrong['days']} />
        <Field label="Raw records in a report" mono suffix="MB" value={attach} onChange={setAttach} error={wrong['attach'] ?? wrong['settings.attachMegabytes']} />
        <Field label="Assumed not natural" mono suffix="%" value={assumed} onChange={setAssumed} error={wrong['assumed'] ?? wrong['settings.assumedNotNatural']} />
      </div>
      <p className="quiet">The two-phonon coefficient sets the scale of every nitrogen value. Published values lie between 11.8 and 12.3 cm⁻¹, so nitrogen contents carry 3 to 6 % from this choice alone.</p>
      <p className="quiet">The files of the runs and the photographs travel inside an issued report up to this size, all together; what is left out stands on the report with its digest. Many mail services refuse letters above 20 to 25 MB: common practice, no source. The share of what comes in that is not natural is an assumption about your clients, no finding: under History, Trials, it says what the rates would mean for a stone that passed.</p>
      <div className="row gap12"><span className="label">Readers of reports</span><Segmented label="Readers of reports" value={readers} onChange={setReaders} options={[{ value: 'international', label: 'international' }, { value: 'united-states', label: 'United States' }]} /></div>
      <p className="quiet">Decides which words are pointed out where a report is written: ISO 18323:2015 permits “synthetic”, 16 CFR Part 23 is wary of it.</p>
      <Field label="Storage places, one a line" lines={4} value={places} onChange={setPlaces} error={wrong['settings.places']} placeholder={'safe, tray 1\nsafe, tray 2\nbench'} hint="Offered wherever something is put away; other places can still be written." />
      <div className="row gap16">
        <Field label="Lock after" mono suffix="minutes" value={idle} onChange={setIdle} error={wrong['idle'] ?? wrong['settings.idleMinutes']} />
        <Check label="the second person reads first: states a conclusion before the first one is shown" checked={secondReadsFirst} onChange={setSecondReadsFirst} />
        <Check label="show the names before anybody signed in" checked={showNames} onChange={setShowNames} />
      </div>
      {secondReadsFirst ? <p className="quiet">{s.secondReadsFirstSince === null ? 'Once kept, what' : `Since ${showMoment(s.secondReadsFirstSince, zone)}: what`} is concluded is withheld from everybody but who concluded, until they have stated theirs: in lists, search, drafts of reports, bundles, the audit ledger. What was concluded before could be seen and counts as confirmed, not as read twice.</p> : null}
      {save.error && Object.keys(wrong).length === 0 ? <Trouble {...save.error.failure} /> : null}
      <div><Button kind="main" type="submit" isPending={save.isPending}>Keep the changes</Button></div>
    </form>
  );
}

/** Every place once, in the order written. */
const linesOf = (text: string): string[] => [...new Set(text.split('\n').map((line) => line.trim()).filter(Boolean))];
