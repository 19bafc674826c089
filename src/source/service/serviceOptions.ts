import { InvalidInputError } from '../../errors.ts';
import { realClock, type ServiceClock } from './serviceClock.ts';

/**
 * Address under which the public archive keeps its files. The folders `all` and `by_year` and the two lists stand in the
 * data set's own readme (which gives the older ftp address); host, scheme and `by_station` as public programs use them.
 */
export const DEFAULT_ADDRESS = 'https://www.ncei.noaa.gov/pub/data/ghcn/daily/';

/** How the client behaves towards the service. */
export interface ServiceOptions {
  /** Folder address that the files' places are taken from. */
  readonly address: string;
  /** Folder for the fetched files and their index; made when the first file arrives. */
  readonly folder: string;
  /** What the client calls itself. */
  readonly agent: string;
  /** Most requests at a time. */
  readonly mostAtOnce: number;
  /** Least time from one request's start to the next one's. [ms] */
  readonly spacingMs: number;
  /** Longest wait for the head of an answer. [ms] */
  readonly connectMs: number;
  /** Longest wait for the next piece of an answer. [ms] */
  readonly idleMs: number;
  /** Longest time for one file, attempts and waits between them included. [ms] */
  readonly totalMs: number;
  /** Most attempts at one file. */
  readonly attempts: number;
  /** Wait before the second attempt; doubled for each further one. [ms] */
  readonly firstWaitMs: number;
  /** Longest wait between attempts. [ms] */
  readonly mostWaitMs: number;
  /** Longest wait that the service may ask for. [ms] */
  readonly mostAskedWaitMs: number;
  /** Most that a file may hold as it is sent. [B] */
  readonly mostBytes: number;
  readonly clock: ServiceClock;
  /** Uniform on 0 to 1, for jitter. */
  readonly random: () => number;
}

/** Options as the caller gives them: where to fetch to, and whatever is to differ from the defaults. */
export type GivenServiceOptions = Pick<ServiceOptions, 'folder'> & Partial<ServiceOptions>;

const MINUTE_MS = 60_000;

/**
 * Completes the options.
 * @throws {InvalidInputError} RECORDS_ADDRESS_INVALID
 */
export function serviceOptions(given: GivenServiceOptions): ServiceOptions {
  const defaults = {
    agent: 'drywake',
    mostAtOnce: 2,
    spacingMs: 250,
    connectMs: 20_000,
    idleMs: 30_000,
    totalMs: 15 * MINUTE_MS,
    attempts: 5,
    firstWaitMs: 1000,
    mostWaitMs: 30_000,
    mostAskedWaitMs: 2 * MINUTE_MS,
    mostBytes: 200_000_000,
    clock: realClock,
    random: Math.random,
  };
  return { ...defaults, ...given, address: folderAddress(given.address ?? DEFAULT_ADDRESS) };
}

function folderAddress(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : null;
  const isPlain =
    url !== null && url.search === '' && url.hash === '' && url.username === '' && url.password === '';
  if (!isPlain || !/^https?:$/.test(url.protocol)) {
    throw new InvalidInputError('RECORDS_ADDRESS_INVALID', `"${text}" is no address of a records service.`, {
      hint: `Write an http or https folder address without user, query and fragment, such as ${DEFAULT_ADDRESS}.`,
      details: { address: text },
    });
  }
  return url.href.endsWith('/') ? url.href : `${url.href}/`;
}
