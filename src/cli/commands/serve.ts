import type { Command as Program } from 'commander';
import type { CliDeps } from '../command.ts';
import { wholeNumberOption } from '../optionValues.ts';

/** Port that is taken where none is given. */
const DEFAULT_PORT = 4717;

/** `drywake serve`: the page and its interface, on this computer alone. */
export function define(program: Program, deps: CliDeps): void {
  program
    .option('--port <n>', 'port to listen on; 0 takes any free one', wholeNumberOption, DEFAULT_PORT)
    .addHelpText('after', '\nExample:\n  drywake serve --port 4717\n')
    .action(({ port }: { port: number }) => deps.serve({ port }));
}
