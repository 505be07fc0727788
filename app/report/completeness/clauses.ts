/** What ISO/IEC 17025:2017 asks of a report, in the words of this program. `key` is stable: reasons are kept under it. */
export type Clause = {
  readonly key: string;
  readonly clause: string;
  readonly asks: string;
  /** True where a report may say that it does not apply, with a reason. */
  readonly mayNotApply: boolean;
};

const clause = (key: string, number: string, asks: string, mayNotApply = false): Clause => ({ key, clause: number, asks, mayNotApply });

/** ISO/IEC 17025:2017, 7.8.2 to 7.8.8, in its order. 7.8.4 (calibration certificates) concerns no report of this program. */
export const CLAUSES = [
  clause('title', '7.8.2.1 a', 'a title'),
  clause('laboratory', '7.8.2.1 b', 'name and address of the laboratory'),
  clause('place', '7.8.2.1 c', 'where the tests were made'),
  clause('identity', '7.8.2.1 d', 'one number on every page, and a clear end'),
  clause('client', '7.8.2.1 e', 'name and contact of the client'),
  clause('methods', '7.8.2.1 f', 'the methods used'),
  clause('items', '7.8.2.1 g', 'what was tested, told so that it can’t be confused, and its condition'),
  clause('received', '7.8.2.1 h', 'the day of receipt'),
  clause('tested', '7.8.2.1 i', 'the days of testing'),
  clause('issued', '7.8.2.1 j', 'the day of issue'),
  clause('sampling', '7.8.2.1 k', 'how stones were drawn, where not all were tested', true),
  clause('relates', '7.8.2.1 l', 'that results relate only to the items tested'),
  clause('results', '7.8.2.1 m', 'the results, with their units'),
  clause('departures', '7.8.2.1 n', 'departures from the method'),
  clause('authorised', '7.8.2.1 o', 'who authorises the report'),
  clause('external', '7.8.2.1 p', 'which results come from outside'),
  clause('client-information', '7.8.2.2', 'that what the client states is marked as the client’s'),
  clause('conditions', '7.8.3.1 a', 'the conditions of the tests', true),
  clause('uncertainty', '7.8.3.1 c', 'the uncertainty of measurement', true),
  clause('sampling-report', '7.8.5', 'what is told of sampling done by the laboratory', true),
  clause('conformity', '7.8.6', 'the decision rule of a statement of conformity', true),
  clause('opinions', '7.8.7', 'opinions marked as such, with their basis, by persons authorised for them'),
  clause('amendment', '7.8.8', 'what a revision replaces, what it changes and why'),
] as const satisfies readonly Clause[];

export type ClauseKey = (typeof CLAUSES)[number]['key'];

export const clauseByKey = (key: string): Clause | undefined => CLAUSES.find((one) => one.key === key);
