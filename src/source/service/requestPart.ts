import { again, type PartAnswer, type PartRequest } from './partRequest.ts';
import { receiveBody } from './receiveBody.ts';
import type { FileVersion } from './recordsFolder.ts';
import { retryAfterMs } from './retryDelay.ts';
import type { ServiceOptions } from './serviceOptions.ts';
import { redirected, refusedByService, stopped, unreachable, webPage } from './serviceRefusals.ts';
import { TimeLimit } from './timeLimit.ts';

const MOST_HOPS = 3;
const TRY_AGAIN = new Set([408, 425, 429, 500, 502, 503, 504]);
/**
 * Sends one request and writes what arrives into the part file.
 * @throws {SourceFailedError} FETCH_REFUSED, FETCH_TOO_LARGE, FETCH_NOT_A_RECORD, FETCH_REDIRECTED,
 * SERVICE_UNREACHABLE where the certificate does not hold
 * @throws {ConflictError} FETCH_STOPPED where the user stops it
 */
export async function requestPart(request: PartRequest, options: ServiceOptions): Promise<PartAnswer> {
  const limit = new TimeLimit(request.withinMs, request.signal);
  try {
    limit.next(options.connectMs, `no answer came within ${options.connectMs / 1000} s`);
    const response = await ask(request, options, limit);
    const answer = await answerOf(response, request, options, limit);
    if (answer.kind !== 'whole') response.body?.cancel().catch(() => undefined);
    return answer;
  } catch (error) {
    if (request.signal?.aborted) throw stopped();
    if (error === limit.reason) return again(limit.reason.message);
    if (!(error instanceof TypeError)) throw error;
    // fetch says no more than "fetch failed"; the cause tells why.
    const { code } = (error.cause ?? {}) as NodeJS.ErrnoException;
    const why = code ?? error.message;
    if (/CERT|SELF_SIGNED|ERR_TLS|ERR_SSL/.test(why)) throw unreachable(new URL(request.url).host, why);
    return limit.answered
      ? again('the connection broke off')
      : { kind: 'again', why: `no connection (${why})`, waitMs: null, offline: why };
  } finally {
    limit.end();
  }
}

/** The answer's head, redirections within the host followed. */
async function ask(request: PartRequest, options: ServiceOptions, limit: TimeLimit): Promise<Response> {
  let url = request.url;
  for (let hop = 0; ; hop++) {
    const response = await limit.within(
      fetch(url, { headers: headersOf(request, options), redirect: 'manual', signal: limit.signal }),
    );
    const location = response.headers.get('location');
    if (response.status < 300 || response.status === 304 || response.status >= 400 || location === null) {
      limit.answered = true;
      return response;
    }
    await response.body?.cancel();
    const from = new URL(url);
    const to = URL.canParse(location, url) ? new URL(location, url) : null;
    const sameHost = to?.host === from.host && to.protocol === from.protocol;
    if (to === null || !sameHost || hop >= MOST_HOPS) throw redirected(request.title, to?.host ?? location);
    url = to.href;
  }
}

function headersOf({ held, part }: PartRequest, { agent }: ServiceOptions): Record<string, string> {
  // Packed on the way, a file could be neither measured nor gone on with.
  const headers: Record<string, string> = { 'accept-encoding': 'identity', 'user-agent': agent };
  if (part !== null) {
    headers.range = `bytes=${part.bytes}-`;
    headers['if-range'] = validatorOf(part) ?? '';
  } else if (held !== null) {
    if (held.etag !== null) headers['if-none-match'] = held.etag;
    if (held.lastModified !== null) headers['if-modified-since'] = held.lastModified;
  }
  return headers;
}

/** What tells versions apart byte by byte; null where the service gave nothing that does. */
export function validatorOf({ etag, lastModified }: FileVersion): string | null {
  return etag !== null && !etag.startsWith('W/') ? etag : lastModified;
}

async function answerOf(
  response: Response,
  request: PartRequest,
  options: ServiceOptions,
  limit: TimeLimit,
): Promise<PartAnswer> {
  const { status, headers } = response;
  if (status === 304)
    return request.held === null ? again('an answer that fits no question') : { kind: 'unchanged' };
  if (status === 404 || status === 410) return { kind: 'missing' };
  if (status === 416) return { kind: 'restart', why: 'the rest of the file could not be had' };
  if (TRY_AGAIN.has(status)) {
    return again(`the service answered with status ${status}`, retryAfterMs(headers, options.clock.now()));
  }
  if (status !== 200 && status !== 206) throw refusedByService(request.title, status);
  if (/^text\/html|^application\/xhtml/i.test(headers.get('content-type') ?? ''))
    throw webPage(request.title);
  const version: FileVersion = {
    url: request.url,
    etag: headers.get('etag'),
    lastModified: headers.get('last-modified'),
  };
  if (status === 206 && !goesOn(request.part, version, headers)) {
    return { kind: 'restart', why: 'the rest that came was of another version' };
  }
  return receiveBody(response, request, version, options, limit);
}

/** Whether an answer is the rest of the very version whose beginning is here. */
function goesOn(part: PartRequest['part'], version: FileVersion, headers: Headers): boolean {
  const from = /^bytes (\d+)-/.exec(headers.get('content-range') ?? '')?.[1];
  return part !== null && Number(from) === part.bytes && validatorOf(part) === validatorOf(version);
}
