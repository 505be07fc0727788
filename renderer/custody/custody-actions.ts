import type { WrittenEvent } from '../../app/domain/custody-event.ts';

export type Line = 'from' | 'to' | 'purpose' | 'dueBack' | 'place' | 'seal' | 'weight' | 'note';
export type CustodyAction = {
  readonly event: WrittenEvent; readonly name: string; readonly title: string;
  /** The key that begins it. */
  readonly keys: string;
  readonly asks: readonly Line[]; readonly needs: readonly Line[];
  /** Photographs of this moment may be kept with the entry. */
  readonly pictures?: boolean;
};

const WEIGH: CustodyAction = { event: 'weighed', name: 'Weigh', title: 'Weigh', keys: 'W', asks: ['weight', 'note'], needs: ['weight'] };
const SEAL: CustodyAction = { event: 'sealed', name: 'Seal', title: 'Seal', keys: 'S', asks: ['seal', 'weight', 'place', 'note'], needs: ['seal'], pictures: true };
const OPEN: CustodyAction = { event: 'opened', name: 'Open', title: 'Open the seal', keys: 'O', asks: ['seal', 'weight', 'note'], needs: [], pictures: true };
const MOVE: CustodyAction = { event: 'moved', name: 'Move', title: 'Move', keys: 'P', asks: ['place', 'note'], needs: ['place'] };
const SEEN: CustodyAction = { event: 'seen', name: 'Seen', title: 'Seen in its place', keys: 'C', asks: ['place', 'seal', 'note'], needs: [] };
const HAND_OVER: CustodyAction = { event: 'handed-over', name: 'Hand over', title: 'Hand over', keys: 'H', asks: ['to', 'from', 'purpose', 'dueBack', 'place', 'weight', 'note'], needs: ['to'] };
const TAKE_BACK: CustodyAction = { event: 'taken-back', name: 'Take back', title: 'Take back', keys: 'B', asks: ['place', 'from', 'to', 'seal', 'weight', 'note'], needs: ['place'], pictures: true };
const RETURN: CustodyAction = { event: 'returned', name: 'Return', title: 'Return to the client', keys: 'T', asks: ['to', 'weight', 'note'], needs: ['to'] };

/** What can be done to an item where it is: one that is out is taken back first, or goes on to somebody else. */
export const custodyActions = (out: boolean): readonly CustodyAction[] => (out ? [TAKE_BACK, HAND_OVER, RETURN] : [WEIGH, SEAL, OPEN, MOVE, SEEN, HAND_OVER, RETURN]);

/** What can be written for several items at once: nothing that is read off each of them. */
export const MANY_ACTIONS: readonly CustodyAction[] = [SEEN, MOVE, HAND_OVER, TAKE_BACK].map((action) => ({ ...action, asks: action.asks.filter((line) => line !== 'weight' && line !== 'seal'), pictures: false }));

export const LINE_NAMES: Readonly<Record<Line, string>> = {
  from: 'From', to: 'To', purpose: 'For what', dueBack: 'Expected back', place: 'Where to', seal: 'Seal number', weight: 'Weight', note: 'Remark',
};

/** Entries that name a giver and a taker: a form is printed for them, which both sign. */
export const changesHands = (event: string): boolean => event === 'handed-over' || event === 'taken-back' || event === 'returned';
