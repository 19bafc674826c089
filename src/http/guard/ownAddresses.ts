import { hostname, networkInterfaces } from 'node:os';

/** Addresses that stand for all of this computer's own. */
const ALL = new Set(['0.0.0.0', '::']);

/** Names under which other computers can call a server that listens on an address; the likeliest first. */
export function ownAddresses(host: string): string[] {
  if (!ALL.has(host)) return [host];
  const addresses = Object.values(networkInterfaces())
    .flatMap((ones) => ones ?? [])
    .filter(({ internal, family }) => !internal && (host === '::' || family === 'IPv4'))
    .map(({ address }) => address);
  return [...addresses, hostname().toLowerCase(), `${hostname().toLowerCase()}.local`];
}
