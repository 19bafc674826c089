import { keptToken } from './keptToken.ts';
import { ownAddresses } from './ownAddresses.ts';
import { OWN_COMPUTER, type ServerGuard } from './serverGuard.ts';

/** A guard, and the addresses under which the page is opened, once the port is known. */
export interface GuardedAddress {
  readonly guard: ServerGuard;
  addresses(port: number): string[];
}

/**
 * Guard of a server that listens on an address.
 * @param host the address; undefined for this computer alone, which needs no token
 * @param folder data folder, where a token that the program makes is kept
 * @param givenToken token from the user; empty or undefined to have one made
 */
export async function guardFor(
  host: string | undefined,
  folder: string,
  givenToken: string | undefined,
): Promise<GuardedAddress> {
  if (host === undefined) {
    return { guard: OWN_COMPUTER, addresses: (port) => [`http://127.0.0.1:${port}/`] };
  }
  const names = ownAddresses(host);
  const token = givenToken || (await keptToken(folder));
  const inUrl = (name: string) => (name.includes(':') ? `[${name}]` : name);
  return {
    guard: { ...OWN_COMPUTER, names, token },
    addresses: (port) =>
      names.map((name) => `http://${inUrl(name)}:${port}/?token=${encodeURIComponent(token)}`),
  };
}
