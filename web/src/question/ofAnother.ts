import type { QuestionInput } from '../api/contract.ts';

/** The change to another residual: what was given for the former one falls away. */
export const ofAnother = (residual: string): Partial<QuestionInput> => ({
  residual,
  interval: undefined,
  halfLifeDays: undefined,
  rateGramsPerHa: undefined,
  labelEntry: undefined,
  evidence: undefined,
});
