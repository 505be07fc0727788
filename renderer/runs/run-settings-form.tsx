import type { InstrumentView } from '../../app/contract/work.ts';
import { INSTRUMENT_STATE_WORDS } from '../../app/domain/instrument-state.ts';
import { METHODS, type MethodId } from '../../app/domain/method.ts';
import { runCounts } from '../../app/runs/run-counts.ts';
import { Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { resolutionUnit } from '../../app/domain/resolution-unit.ts';
import { settingsOf, type RunSettings, type SettingKey } from './run-settings.ts';

const NONE = 'none';
const FIELDS: Readonly<Record<SettingKey, { readonly label: string; readonly suffix: string; readonly placeholder: string }>> = {
  laserNm: { label: 'Laser, calibrated', suffix: 'nm', placeholder: '' },
  temperatureK: { label: 'Stone’s temperature', suffix: 'K', placeholder: '295' },
  integrationMs: { label: 'Integration time', suffix: 'ms', placeholder: '' },
  resolution: { label: 'Resolution (FWHM)', suffix: '', placeholder: '' },
};

/** With what the run was made: the instrument and its settings, as it remembers them. */
export function RunSettingsForm({ method, instruments, instrumentId, onInstrument, settings, onSetting, errors }: {
  readonly method: MethodId; readonly instruments: readonly InstrumentView[]; readonly instrumentId: string | null; readonly onInstrument: (id: string | null) => void;
  readonly settings: RunSettings; readonly onSetting: (key: SettingKey, text: string) => void; readonly errors: Readonly<Record<string, string>>;
}) {
  const instrument = instruments.find((i) => i.id === instrumentId);
  const state = instrument?.state ?? 'no-instrument';
  const keys = settingsOf(method);
  return (
    <section className="run-settings">
      <Choice label="Instrument" value={instrumentId ?? NONE} onChange={(value) => { onInstrument(value === NONE ? null : value); }} error={errors['instrumentId']}
        options={[...instruments.map((i) => ({ value: i.id, label: `${i.name}, ${INSTRUMENT_STATE_WORDS[i.state]}` })), { value: NONE, label: METHODS[method].yields === 'observation' ? 'none needed' : 'no instrument named' }]} />
      {keys.length > 0 ? (
        <div className="run-numbers">
          {keys.map((key) => (
            <Field key={key} label={FIELDS[key].label} mono suffix={key === 'resolution' ? resolutionUnit(method) : FIELDS[key].suffix} placeholder={FIELDS[key].placeholder}
              value={settings[key]} error={errors[key]} onChange={(text) => { onSetting(key, text); }} />
          ))}
        </div>
      ) : null}
      {runCounts(method, state) ? null : (
        <p className="warn">{instrument
          ? `${instrument.name}: ${INSTRUMENT_STATE_WORDS[state]}. The run is kept and marked; its findings are listed and do not count until the instrument is in order and the test is done again.`
          : instruments.length === 0
            ? `No instrument of the house is entered for ${METHODS[method].name.toLowerCase()}. The run is kept; its findings do not count. Add the instrument in the list of instruments.`
            : 'No instrument is named: the run is kept, its findings do not count.'}</p>
      )}
    </section>
  );
}
