import { runDrywake } from './runDrywake.ts';

/** Help of a command, as it is printed. */
export const helpOf = async (argv: readonly string[], folder: string): Promise<string> =>
  (await runDrywake([...argv, '--help'], folder)).out;

/** Names of the commands below one, from its help. */
export const namesBelow = async (argv: readonly string[], folder: string): Promise<string[]> =>
  [...((await helpOf(argv, folder)).split('\nCommands:\n')[1] ?? '').matchAll(/^ {2}([a-z]+)/gm)]
    .map(([, name]) => name)
    .filter((name) => name !== 'help');

/** Long names of the flags of a command, from its help. */
export const optionsOf = async (argv: readonly string[], folder: string): Promise<string[]> =>
  [...(await helpOf(argv, folder)).matchAll(/^ {2}(?:-\w, )?(--[a-z-]+)/gm)].map(([, name]) => name);
