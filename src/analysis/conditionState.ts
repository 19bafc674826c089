import type { WaterJudgement } from './waterWindow.ts';

/** How a condition stands that holds, does not, or of which that is not known. */
export const stateOf = (holds: boolean | null): WaterJudgement['state'] =>
  holds === null ? 'open' : holds ? 'met' : 'not met';
