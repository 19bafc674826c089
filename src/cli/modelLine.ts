import type { ModelUsed } from '../schema/modelUsed.ts';

/** The last line of a printed answer. */
export const modelLine = ({ name, version }: ModelUsed): string => `Model: ${name}, version ${version}.`;
