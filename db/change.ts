/** What a change of records says about itself in the ledgers: when, by whom, by which operation of the contract. */
export type Change = {
  /** UTC, ISO 8601 with milliseconds. */
  readonly at: string;
  /** Null only for what happens before the first person exists. */
  readonly personId: string | null;
  readonly operation: string;
};
