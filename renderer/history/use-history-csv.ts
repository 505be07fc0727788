import { useState } from 'react';
import type { HistoryRow } from '../../app/contract/history.ts';
import type { Input } from '../../app/contract/index.ts';
import { COLOUR_CLASS_WORDS } from '../../app/domain/colour-class.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { csvLine, type CsvValue } from '../../app/tables/csv-text.ts';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { showDay } from '../look/time.ts';
import { askPatiently, DoorFailure } from '../queries.ts';
import { conclusionWords } from '../stones/conclusion-words.ts';
import { STAGE_WORDS } from '../stones/stage-words.ts';
import { gatherPages } from './gather-pages.ts';

/** The door takes no more. */
const ROWS = 1000;
const HEAD = ['case', 'stone', 'client', 'received', 'case state', 'conclusion', 'stage', 'setting', 'colour class', 'carat', 'concluded by', 'answered by', 'sent further', 'disagreement'];

const cells = (r: HistoryRow, zone: string): CsvValue[] => [
  r.caseNumber, r.label, r.clientName, showDay(r.receivedAt, zone), r.state, conclusionWords(r, 'open'), STAGE_WORDS[r.stage], r.mounted ? 'mounted' : 'loose', COLOUR_CLASS_WORDS[r.colourClass],
  r.weight === null ? null : formatCarat(r.weight), r.concludedBy, r.confirmedBy, r.sentFurther ? 'yes' : 'no', r.disagreed ? 'yes' : 'no',
];

const NEVER_RESTS = { code: 'conflict', message: 'The list changed again and again while it was written.', next: 'Save it once more when nobody is writing.' } as const;

/** Saves every stone that fits as a table: read page by page, so that neither process holds more of the list than its lines. */
export function useHistoryCsv(zone: string) {
  const [written, setWritten] = useState<number | null>(null);
  const notes = useNotes();
  const save = async (asked: Omit<Input<'history.stones'>, 'limit' | 'offset'>): Promise<void> => {
    if (written !== null) return;
    setWritten(0);
    try {
      const lines = await gatherPages((offset) => askPatiently('history.stones', { ...asked, limit: ROWS, offset }), (row) => csvLine(cells(row, zone)), setWritten);
      if (lines === null) notes.complain(NEVER_RESTS);
      else saveFile('history.csv', 'text/csv', csvLine(HEAD) + lines.join(''));
    } catch (e) {
      if (!(e instanceof DoorFailure)) throw e;
      notes.complain(e.failure);
    } finally {
      setWritten(null);
    }
  };
  return { save: (asked: Parameters<typeof save>[0]) => { void save(asked); }, isPending: written !== null, written: written ?? 0 };
}
