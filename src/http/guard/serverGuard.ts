/** Who may ask a server, under which names, and how much at once. */
export interface ServerGuard {
  /** Names under which the server may be called, beside those of this computer itself: a host name or an address. */
  readonly names: readonly string[];
  /** What everyone must show; null where the server listens to this computer alone. */
  readonly token: string | null;
  /** Requests to the interface that one client may make in a second, taken over two seconds. [1/s] */
  readonly requestsPerSecond: number;
  /** Requests to the interface that may be under way at once; more are told to come back. */
  readonly mostUnderWay: number;
}

/** A server that listens to this computer alone. The page itself asks some 25 times a second while a marker is dragged. */
export const OWN_COMPUTER: ServerGuard = {
  names: [],
  token: null,
  requestsPerSecond: 200,
  mostUnderWay: 128,
};
