/** One unit (a yard, or a whole operation) in one period: colonies at risk and colonies lost. */
export interface AtRiskAndLost {
  readonly atRisk: number;
  readonly lost: number;
}
