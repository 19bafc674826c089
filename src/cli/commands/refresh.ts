import type { Command as Program } from 'commander';
import type { CliDeps } from '../command.ts';
import { refreshText } from '../refreshText.ts';
import { addWordingOptions, type WordingFlags, wordingOf } from '../wordingOptions.ts';

/** `drywake refresh`: all fields answered again. */
export function define(program: Program, deps: CliDeps): void {
  addWordingOptions(program, 'what is told')
    .option('--no-fetch', 'leave the public records service alone: answer from the records that are here')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', '\nExample:\n  drywake refresh\n')
    .action(async ({ fetch, json, ...flags }: WordingFlags & { fetch: boolean; json?: boolean }) => {
      const refresh = await deps.withDesk((desk) => desk.refresh(fetch, wordingOf(flags)));
      deps.terminal.out(json ? `${JSON.stringify(refresh, null, 2)}\n` : refreshText(refresh));
    });
}
