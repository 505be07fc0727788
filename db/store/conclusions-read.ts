import type { ConclusionView } from '../../app/contract/work.ts';
import { conclusionId } from '../../app/domain/conclusion.ts';
import { proposal } from '../../app/evidence/proposal.ts';
import type { ReadDb, WriteTx } from '../handle.ts';

type Row = {
  id: string; stone_id: string; ordinal: number; conclusion: string; reasons: string; departure: string; rules: string; proposal: string;
  person: string; person_id: string; at: string;
  c_person: string | null; c_person_id: string | null; agrees: number | null; c_reason: string | null; c_at: string | null; c_outcome: string | null; read_first: number | null;
};

const SELECT = `
  SELECT c.id, c.stone_id, c.ordinal, c.conclusion, c.reasons, c.departure, c.rules, c.proposal, p.name AS person, c.person_id, c.at,
         q.name AS c_person, k.person_id AS c_person_id, k.agrees, k.reason AS c_reason, k.at AS c_at, k.outcome AS c_outcome, k.read_first
  FROM conclusion c JOIN person p ON p.id = c.person_id
  LEFT JOIN confirmation k ON k.conclusion_id = c.id LEFT JOIN person q ON q.id = k.person_id`;

function viewOf(row: Row): ConclusionView {
  return {
    id: row.id, stoneId: row.stone_id, ordinal: row.ordinal, conclusion: conclusionId.parse(row.conclusion), reasons: row.reasons, departure: row.departure,
    rules: row.rules, proposal: proposal.parse(JSON.parse(row.proposal)), by: row.person, byId: row.person_id, at: row.at,
    confirmation: row.c_person_id === null ? null
      : {
        by: row.c_person ?? '', byId: row.c_person_id, agrees: row.agrees === 1, reason: row.c_reason ?? '', at: row.c_at ?? '',
        outcome: conclusionId.nullable().parse(row.c_outcome), readFirst: row.read_first === 1,
      },
  };
}

/** All conclusions of a stone, the oldest first; the last one stands. */
export function conclusionsOfStone(db: ReadDb | WriteTx, stoneId: string): ConclusionView[] {
  return db.all<Row>(`${SELECT} WHERE c.stone_id = @stoneId ORDER BY c.ordinal`, { stoneId }).map(viewOf);
}

export function conclusionById(db: ReadDb | WriteTx, id: string): ConclusionView | null {
  const row = db.get<Row>(`${SELECT} WHERE c.id = @id`, { id });
  return row === undefined ? null : viewOf(row);
}
