/** The rules that a class works by. Read with `loadRuleSet`; never mixed within a sheet. */
export interface RuleSet {
  readonly name: string;
  readonly title: string;
  readonly source: string;
}
