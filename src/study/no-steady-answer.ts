/** What a network that has no steady answer says of itself. */
export interface NoSteadyAnswerFacts {
  /** The parts that cause it, as the layout names them: `check valve of pump b`. */
  where: string[];
  /** What is wrong, in one sentence without units. */
  message: string;
  /** What to change so that there is an answer. */
  action: string;
  /** What the solver saw: iterations, residuals, the worst part. For whoever looks closer. */
  detail?: string;
}

/** The layout is in order, and yet nothing flows steadily in it: exit status 3. */
export class NoSteadyAnswer extends Error {
  readonly where: string[];
  readonly action: string;
  readonly detail?: string;

  constructor(facts: NoSteadyAnswerFacts, options?: ErrorOptions) {
    super(facts.message, options);
    this.name = 'NoSteadyAnswer';
    this.where = facts.where;
    this.action = facts.action;
    this.detail = facts.detail;
  }
}
