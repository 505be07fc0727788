import { Command } from 'cmdk';
import { useEffect, useMemo, useState } from 'react';
import { Dialog, Modal, ModalOverlay } from 'react-aria-components';
import type { Output } from '../../app/contract/index.ts';
import { door } from '../door.ts';
import { setTheme, useTheme, type Theme } from '../look/theme.ts';
import { useAsk } from '../queries.ts';
import { go, type Place } from '../router.ts';
import { useKey, useSheetKeys } from './keymap.ts';
import './palette.css';

const ROOMS: readonly { readonly name: string; readonly place: Place }[] = [
  { name: 'Bench', place: { view: 'bench' } }, { name: 'Cases', place: { view: 'cases' } }, { name: 'Stones', place: { view: 'stones' } },
  { name: 'Custody', place: { view: 'custody' } }, { name: 'Reports', place: { view: 'reports' } }, { name: 'Instruments', place: { view: 'instruments' } },
  { name: 'History', place: { view: 'history' } }, { name: 'Figures over time', place: { view: 'history', panel: 'figures' } }, { name: 'Trials of known samples', place: { view: 'history', panel: 'trials' } }, { name: 'Ledgers', place: { view: 'ledgers' } }, { name: 'House', place: { view: 'house' } },
];

/** The door takes no more. */
const MOST_CHARACTERS = 120;

let openPalette: () => void = () => undefined;
/** Opens the palette from a button. */
export const findAnything = () => { openPalette(); };

/** A case in a bundle, “BUNDLE/FOLDER”; a folder has a path of its own. */
function goToSealed(id: string): void {
  const at = id.indexOf('/');
  go({ view: 'bundle', id: id.slice(0, at), panel: id.slice(at + 1) });
}

type FoundHit = Output<'find.anything'>[number];

/** What a hit leads to. */
function goToHit(hit: FoundHit): void {
  if (hit.kind === 'stone') go({ view: 'stone', id: hit.id });
  else if (hit.kind === 'lot') go({ view: 'lot', id: hit.id });
  else if (hit.kind === 'case') go({ view: 'case', id: hit.id });
  else if (hit.kind === 'report') go(hit.caseId ? { view: 'case', id: hit.caseId } : { view: 'reports' });
  else if (hit.kind === 'sealed') goToSealed(hit.id);
  else window.location.hash = `#/cases/${encodeURIComponent(hit.title)}`;
}

function actionsOf(theme: Theme): readonly { readonly name: string; readonly run: () => void }[] {
  return [
    { name: 'Take in a case', run: () => { go({ view: 'intake' }); } },
    { name: 'Analyse a folder…', run: () => { go({ view: 'batch' }); } },
    { name: 'Check a report or a bundle…', run: () => { go({ view: 'check' }); } },
    { name: 'Bundles of other laboratories', run: () => { go({ view: 'bundles' }); } },
    { name: theme === 'dark' ? 'Use the light look' : 'Use the dark look', run: () => { setTheme(theme === 'dark' ? 'light' : 'dark'); } },
    { name: 'Verify the ledgers', run: () => { window.location.hash = '#/ledgers'; } },
    ...ROOMS.map((r) => ({ name: `Go to ${r.name}`, run: () => { go(r.place); } })),
  ];
}

const KIND_WORDS: Readonly<Partial<Record<FoundHit['kind'], string>>> = { sealed: 'another laboratory' };

function Hit({ hit, words, onPick }: { readonly hit: FoundHit; readonly words: string; readonly onPick: (run: () => void) => void }) {
  return (
    <Command.Item value={`${hit.title} ${hit.detail} ${words} ${hit.id}`} onSelect={() => { onPick(() => { goToHit(hit); }); }}>
      <span className={`palette-title one-line ${hit.kind === 'client' ? '' : 'mono'}`}>{hit.title}</span><span className="quiet one-line grow" title={hit.detail}>{hit.detail}</span><span className="quiet palette-kind">{KIND_WORDS[hit.kind] ?? hit.kind}</span>
    </Command.Item>
  );
}

function PaletteSheet({ onClose }: { readonly onClose: () => void }) {
  const [text, setText] = useState('');
  const theme = useTheme();
  const trimmed = text.trim();
  const found = useAsk('find.anything', trimmed.length > 1 ? { text: trimmed } : null);
  // Only what was found for these very words: Enter must never open a hit of the words before.
  const hits = trimmed.length > 1 ? found.data : undefined;
  const own = hits?.filter((hit) => hit.kind !== 'sealed') ?? [];
  const others = hits?.filter((hit) => hit.kind === 'sealed') ?? [];
  const actions = useMemo(() => actionsOf(theme), [theme]);
  useSheetKeys();
  const pick = (run: () => void) => { onClose(); run(); };
  return (
    <ModalOverlay className="palette-veil" isOpen isDismissable onOpenChange={(open) => { if (!open) onClose(); }}>
      <Modal className="palette">
        <Dialog className="palette-dialog" aria-label="Find anything">
          <Command label="Find anything" loop>
            <Command.Input autoFocus value={text} onValueChange={setText} maxLength={MOST_CHARACTERS} placeholder="A number, a name, a word, or what you want to do" />
            <Command.List>
              <Command.Empty>{trimmed.length > 1 && !found.isFetching ? 'Nothing in this casebook has that in it.' : 'Type two letters or more.'}</Command.Empty>
              {own.length > 0 ? <Command.Group heading="In the casebook">{own.map((hit) => <Hit key={`${hit.kind}-${hit.id}`} hit={hit} words={trimmed} onPick={pick} />)}</Command.Group> : null}
              {others.length > 0 ? <Command.Group heading="In bundles of other laboratories">{others.map((hit) => <Hit key={hit.id} hit={hit} words={trimmed} onPick={pick} />)}</Command.Group> : null}
              <Command.Group heading="Do">
                {actions.map((a) => <Command.Item key={a.name} value={a.name} onSelect={() => { pick(a.run); }}>{a.name}</Command.Item>)}
              </Command.Group>
            </Command.List>
          </Command>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Finds everything by number, name or word, and does what has no button in sight. Mod+K. */
export function Palette() {
  const [open, setOpen] = useState(false);
  useEffect(() => { openPalette = () => { setOpen(true); }; }, []);
  useKey('Mod+K', () => { openPalette(); });
  useKey('N', () => { go({ view: 'intake' }); });
  useEffect(() => door.subscribe((event) => {
    if (event.kind !== 'menu') return;
    if (event.command === 'find') openPalette();
    if (event.command === 'new-case') go({ view: 'intake' });
    if (event.command.startsWith('go:')) window.location.hash = `#/${event.command.slice(3)}`;
  }), []);
  return open ? <PaletteSheet onClose={() => { setOpen(false); }} /> : null;
}
