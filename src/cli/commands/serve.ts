import type { Command as Program } from 'commander';
import type { CliDeps } from '../command.ts';
import { portOption } from '../optionValues.ts';

/** Port that is taken where none is given. */
const DEFAULT_PORT = 4717;

/** `drywake serve`: the page and its interface, on this computer alone unless another address is given. */
export function define(program: Program, deps: CliDeps): void {
  program
    .option('--port <n>', 'port to listen on; 0 takes any free one', portOption, DEFAULT_PORT)
    .option(
      '--host <address>',
      'address to listen on, 0.0.0.0 for all, so that a phone can open it; it then asks for a token, kept in the data folder or given as DRYWAKE_TOKEN (default: this computer alone)',
    )
    .option('--log', 'log every request as a line of JSON, without what was asked or by whom')
    .addHelpText(
      'after',
      '\nExamples:\n  drywake serve --port 4717\n  drywake serve --host 0.0.0.0   # prints the address for the phone\n',
    )
    .action(({ port, host, log }: { port: number; host?: string; log?: boolean }) =>
      deps.serve({ port, host, logRequests: log === true }),
    );
}
