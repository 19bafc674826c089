import { readFileSync } from 'node:fs';

/** The program's version, as package.json has it. */
export const VERSION: string = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
).version;
