import { useState } from 'react';
import type { PieceView as Piece } from '../../app/contract/pieces.ts';
import { countWords } from '../../app/report/count-words.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { useAsk, useChange } from '../queries.ts';
import { go, placeAddress } from '../router.ts';
import { View } from '../shell/view.tsx';
import { MapEditor } from './map-editor.tsx';
import { NewMap } from './new-map.tsx';
import './piece.css';

const SETTING_WORDS = { 'open-back': ', open back', 'closed-back': ', closed back' } as const;
const USUAL_NAMES = ['front', 'back'] as const;

/** "19 mounted stones, open back" */
function besideWords({ item }: Piece): string {
  const stones = item.stones.length;
  return `${countWords(stones, item.kind === 'jewellery' ? 'mounted stone' : 'stone')}${item.setting ? SETTING_WORDS[item.setting] : ''}`;
}

/** The maps of a piece: where each of its stones sits, and what is known of it there. */
export default function PieceView({ itemId, mapId }: { readonly itemId: string; readonly mapId: string | undefined }) {
  const piece = useAsk('pieces.get', { itemId }, { keep: true });
  if (piece.isError) return <View title="Piece"><div className="page page-sheet"><Trouble {...piece.error.failure} /></div></View>;
  if (piece.isPending || piece.data.item.id !== itemId) return <View title="Piece"><Working what="Opening the piece" /></View>;
  return <ShownPiece piece={piece.data} mapId={mapId} />;
}

function ShownPiece({ piece, mapId }: { readonly piece: Piece; readonly mapId: string | undefined }) {
  const { item, maps } = piece;
  const [making, setMaking] = useState(false);
  const [removing, setRemoving] = useState(false);
  const remove = useChange('pieces.removeMap');
  const save = useChange('pieces.saveMap');
  const notes = useNotes();
  const map = maps.find((one) => one.id === mapId) ?? maps[0];
  const usualName = USUAL_NAMES.find((name) => !maps.some((one) => one.name === name)) ?? '';
  const measure = () => { go({ view: 'pair', id: item.id }); };
  useKey('W', measure, !making && !removing);
  const takeOut = () => {
    setRemoving(false);
    if (!map) return;
    const { name, ground, marks } = map;
    remove.mutate({ mapId: map.id, onVersion: map.version }, {
      onSuccess: ({ version }) => {
        notes.say(`The map “${name}” is taken out.`, () => { save.mutate({ mapId: map.id, itemId: item.id, onVersion: version, name, ground, marks }, { onError: (e) => { notes.complain(e.failure); } }); });
        go({ view: 'piece', id: item.id });
      },
      onError: (e) => { notes.complain(e.failure); },
    });
  };
  return (
    <View
      over={<><a className="mono" href={placeAddress({ view: 'case', id: piece.caseId })}>{piece.caseNumber}</a> · {piece.clientName}</>}
      title={`Item ${item.label}`} beside={<span title={item.declared}>{besideWords(piece)}</span>}
      actions={<>{maps.length > 1 && map ? <Segmented label="Maps" value={map.id} onChange={(id) => { go({ view: 'piece', id: item.id, panel: id }); }} options={maps.map((one) => ({ value: one.id, label: one.name }))} /> : null}<Button keys="W" onPress={measure}>Measure photographs</Button></>}>
      {map ? <MapEditor key={map.id} piece={piece} map={map} active={!making && !removing} onNew={() => { setMaking(true); }} onRemoveMap={() => { setRemoving(true); }} /> : (
        <div className="page page-sheet">
          <Empty title="No map of this piece yet">
            <p>A map shows where each stone sits. Begin one on a photograph or a drawing of the piece, or on a plain grid; then place a mark on each stone and tie it to the stone’s folder.</p>
            <div className="row gap8 empty-acts"><Button kind="main" autoFocus onPress={() => { setMaking(true); }}>Begin a map</Button></div>
          </Empty>
        </div>
      )}
      {making ? <NewMap caseId={piece.caseId} item={item} name={usualName} onClose={() => { setMaking(false); }} /> : null}
      {removing && map ? (
        <Dialog title={`Take the map “${map.name}” out?`} role="alertdialog" width={440} onClose={() => { setRemoving(false); }} footer={<><Button onPress={() => { setRemoving(false); }}>Leave it</Button><Button kind="danger" autoFocus onPress={takeOut}>Take it out</Button></>}>
          <p>It no longer shows and is not printed. Its versions stay in the casebook, and the audit ledger says who took it out.</p>
        </Dialog>
      ) : null}
    </View>
  );
}
