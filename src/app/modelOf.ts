import type { ModelUsed } from '../schema/modelUsed.ts';

/** The model of this program, as answers name it. */
export const modelOf = (version: string): ModelUsed => ({ name: 'drywake residual persistence', version });
