import { ConflictError, MissingDataError, SourceFailedError } from '../../errors.ts';

/** Code of the refusal after which nothing more need be asked for: the service cannot be reached at all. */
export const SERVICE_UNREACHABLE = 'SERVICE_UNREACHABLE';
/** Code of the refusal that the user asked for. */
export const FETCH_STOPPED = 'FETCH_STOPPED';

const KEPT = 'The records in the store are as they were.';
const megabytes = (bytes: number): string => `${Number((bytes / 1e6).toPrecision(3))} MB`;
const seconds = (ms: number): string => `${Math.round(ms / 1000)} s`;

export const unreachable = (host: string, why: string): SourceFailedError =>
  new SourceFailedError(SERVICE_UNREACHABLE, `The records service at ${host} cannot be reached (${why}).`, {
    hint: `Check the network and the address (--records), then run the command again. ${KEPT}`,
    details: { host, why },
  });

export const stopped = (): ConflictError =>
  new ConflictError(FETCH_STOPPED, 'Fetching was stopped.', {
    hint: 'Files fetched and imported so far stay; the same command goes on from there.',
  });

export const gaveUp = (title: string, attempts: number, why: string): SourceFailedError =>
  new SourceFailedError(
    'FETCH_FAILED',
    `${title} could not be fetched in ${attempts} attempts; at last ${why}.`,
    {
      hint: `Try again later; what has arrived is kept, and the next attempt goes on from there. ${KEPT}`,
      details: { title, attempts, why },
    },
  );

export const refusedByService = (title: string, status: number): SourceFailedError =>
  new SourceFailedError('FETCH_REFUSED', `The service refuses ${title} (status ${status}).`, {
    hint: `Check the address (--records). ${KEPT}`,
    details: { title, status },
  });

export const asksToWait = (title: string, askedMs: number, mostMs: number): SourceFailedError =>
  new SourceFailedError(
    'SERVICE_BUSY',
    `The service asks to wait ${seconds(askedMs)} before ${title}; ${seconds(mostMs)} is the longest that is waited.`,
    { hint: `Run the command again after that time. ${KEPT}`, details: { title, askedMs, mostMs } },
  );

export const tookTooLong = (title: string, totalMs: number): SourceFailedError =>
  new SourceFailedError('FETCH_TIMED_OUT', `${title} did not arrive within ${seconds(totalMs)}.`, {
    hint: `Run the command again; it goes on where this one broke off. ${KEPT}`,
    details: { title, totalMs },
  });

export const tooLarge = (title: string, mostBytes: number): SourceFailedError =>
  new SourceFailedError(
    'FETCH_TOO_LARGE',
    `The service sends more than ${megabytes(mostBytes)} for ${title}; it was cut off and nothing of it kept.`,
    {
      hint: 'Check the address; where the file is meant to be so large, raise the limit (--largest).',
      details: { title, mostBytes },
    },
  );

export const unpacksTooLarge = (title: string): SourceFailedError =>
  new SourceFailedError(
    'FETCH_TOO_LARGE',
    `${title} unpacks to more than can be read; nothing of it was kept.`,
    {
      hint: 'Check the address (--records).',
      details: { title },
    },
  );

export const webPage = (title: string): SourceFailedError =>
  new SourceFailedError('FETCH_NOT_A_RECORD', `The service answers ${title} with a web page, not a record.`, {
    hint: `A login page of the network or a wrong address (--records) may be behind it. ${KEPT}`,
    details: { title },
  });

export const redirected = (title: string, host: string): SourceFailedError =>
  new SourceFailedError(
    'FETCH_REDIRECTED',
    `The service sends ${title} on to another address, ${host}; that is not followed.`,
    { hint: 'If you trust that address, name it with --records.', details: { title, host } },
  );

export const damagedPacking = (title: string, fault: 'cut-short' | 'damaged'): SourceFailedError =>
  new SourceFailedError(
    'FETCH_DAMAGED',
    `${title} arrives ${fault === 'damaged' ? 'damaged: it cannot be unpacked' : 'cut short: its packed content ends in the middle'}, also when fetched anew.`,
    {
      hint: `The file at the service is probably faulty; try again on another day. ${KEPT}`,
      details: { title, fault },
    },
  );

export const notThere = (title: string, nearest: readonly string[] = []): MissingDataError =>
  new MissingDataError('RECORD_NOT_FOUND', `The service holds no file of ${title}.`, {
    hint:
      nearest.length > 0
        ? `The nearest ids of its station list are ${nearest.join(', ')}.`
        : `Check the name and the address (--records). ${KEPT}`,
    details: { title, nearest },
  });
