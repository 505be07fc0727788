/** From which instant on a first conclusion is withheld; NULL where the house does not ask for two readings. */
const SINCE = `(SELECT CASE WHEN json_valid(l.settings) AND json_extract(l.settings, '$.secondReadsFirst') = 1 THEN json_extract(l.settings, '$.secondReadsFirstSince') END FROM laboratory l)`;

/**
 * Whether what was concluded of a stone is shown to nobody but who concluded: `since` is set, something is concluded, and no conclusion of it could ever be seen,
 * neither from before `since` nor because a second person answered.
 */
export const sealedBy = (stoneId: string, since: string): string => `EXISTS (SELECT 1 FROM conclusion w WHERE w.stone_id = ${stoneId})
  AND NOT EXISTS (SELECT 1 FROM conclusion w WHERE w.stone_id = ${stoneId} AND (w.at < ${since} OR EXISTS (SELECT 1 FROM confirmation b WHERE b.conclusion_id = w.id)))`;

/** For the search index, which is the same for everybody. */
export const SEALED = (stoneId: string): string => `(${SINCE} IS NOT NULL AND ${sealedBy(stoneId, SINCE)})`;

/** For one viewer, `@viewer`, from `@since` on: sealed, none of its conclusions is theirs, and they have neither stated their own nor asked to see it without. */
export const WITHHELD = (stoneId: string): string => `(${sealedBy(stoneId, '@since')} AND NOT EXISTS (SELECT 1 FROM conclusion w WHERE w.stone_id = ${stoneId}
  AND (w.person_id IS @viewer OR EXISTS (SELECT 1 FROM second_reading b WHERE b.conclusion_id = w.id AND b.person_id IS @viewer))))`;
