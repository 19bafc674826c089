import { isPacked, packedFault } from './packedFile.ts';
import type { PartAnswer } from './partRequest.ts';
import type { PoliteQueue } from './politeQueue.ts';
import type { RecordsFolder } from './recordsFolder.ts';
import { requestPart, validatorOf } from './requestPart.ts';
import { backOffMs } from './retryDelay.ts';
import { nameOfPlace, type ServiceFile } from './serviceFiles.ts';
import type { ServiceOptions } from './serviceOptions.ts';
import {
  asksToWait,
  damagedPacking,
  gaveUp,
  notThere,
  stopped,
  tookTooLong,
  unpacksTooLarge,
  unreachable,
} from './serviceRefusals.ts';

/** A file that is whole and here. */
export interface Downloaded {
  readonly path: string;
  /** Which of the file's places held it. */
  readonly place: string;
  /** Whether the copy of an earlier time still holds, so that nothing was sent. */
  readonly unchanged: boolean;
}

/** What downloading works with. */
export interface DownloadDeps {
  readonly folder: RecordsFolder;
  readonly queue: PoliteQueue;
  readonly options: ServiceOptions;
  readonly signal?: AbortSignal;
  onBytes(bytes: number): void;
}

/** Most that a file may hold unpacked, as much as its reader takes. [B] */
const MOST_UNPACKED = 2 * 1024 ** 3;
/** Times that a file may arrive with faulty packing: as it came, gone on with, fetched anew. */
const MOST_FAULTY = 3;
/** Attempts where there seems to be no network at all. */
const MOST_OFFLINE = 2;
const NO_NETWORK = /ENOTFOUND|EAI_AGAIN|ENETUNREACH|ENETDOWN|EHOSTUNREACH|ECONNREFUSED/;

/**
 * Brings a file of the service into the folder, trying its places in turn.
 * @throws {MissingDataError} RECORD_NOT_FOUND
 * @throws {SourceFailedError} FETCH_FAILED, FETCH_TIMED_OUT, FETCH_DAMAGED, FETCH_TOO_LARGE, FETCH_NOT_A_RECORD,
 * FETCH_REDIRECTED, FETCH_REFUSED, SERVICE_BUSY, SERVICE_UNREACHABLE
 * @throws {ConflictError} FETCH_STOPPED where the user stops it
 */
export async function downloadFile(file: ServiceFile, deps: DownloadDeps): Promise<Downloaded> {
  for (const place of file.places) {
    const found = await new Download(file.title, place, deps).run();
    if (found !== null) return found;
  }
  throw notThere(file.title);
}

/** Attempts at one place of a file. */
class Download {
  private readonly url: string;
  private readonly name: string;
  private readonly endAt: number;
  private faulty = 0;

  constructor(
    private readonly title: string,
    private readonly place: string,
    private readonly deps: DownloadDeps,
  ) {
    this.url = new URL(place, deps.options.address).href;
    this.name = nameOfPlace(place);
    this.endAt = deps.options.clock.now() + deps.options.totalMs;
  }

  /** The file, or null where this place does not hold it. */
  async run(): Promise<Downloaded | null> {
    const { folder, options } = this.deps;
    for (let attempt = 1; ; attempt++) {
      const answer = await this.attempt();
      if (answer.kind === 'missing') return null;
      if (answer.kind === 'unchanged') return this.downloaded(true);
      let why = 'its packed content was faulty';
      let waitMs: number | null = null;
      if (answer.kind === 'whole') {
        if (await this.isSound()) {
          await folder.keep(this.name, answer.version);
          return this.downloaded(false);
        }
      } else {
        why = answer.why;
        if (answer.kind === 'restart') await folder.dropPart(this.name);
        else waitMs = answer.waitMs;
        this.refuseOffline(answer, attempt);
      }
      if (attempt >= options.attempts) throw gaveUp(this.title, attempt, why);
      await this.pause(attempt, waitMs);
    }
  }

  private async attempt(): Promise<PartAnswer> {
    const { folder, queue, options, signal, onBytes } = this.deps;
    const part = await this.partToGoOn();
    await this.waiting(queue.turn(signal));
    const withinMs = this.endAt - options.clock.now();
    if (withinMs <= 0) throw tookTooLong(this.title, options.totalMs);
    const { title, url } = this;
    const held = await folder.held(this.name, url);
    await folder.make();
    const partPath = folder.partPathOf(this.name);
    const begin = (version: Parameters<RecordsFolder['beginPart']>[1]) =>
      folder.beginPart(this.name, version);
    try {
      return await requestPart(
        { title, url, held, part, partPath, withinMs, begin, onBytes, ...(signal && { signal }) },
        options,
      );
    } catch (error) {
      // What broke off because the user stopped is gone on with next time; what is refused is no use.
      if (!signal?.aborted) await folder.dropPart(this.name);
      throw error;
    }
  }

  /** The beginning that is here, if the service can be asked for the rest of the same version. */
  private async partToGoOn() {
    const { folder } = this.deps;
    const part = await folder.part(this.name, this.url);
    if (part !== null && validatorOf(part) !== null) return part;
    await folder.dropPart(this.name);
    return null;
  }

  /** Whether the whole file in the part can be unpacked; where not, what to do with it is done. */
  private async isSound(): Promise<boolean> {
    const { folder } = this.deps;
    const path = folder.partPathOf(this.name);
    if (!(await isPacked(path))) return true;
    const fault = await packedFault(path, MOST_UNPACKED);
    if (fault === null) return true;
    this.faulty++;
    // Once the rest of a file that is cut short is asked for; after that it is fetched anew.
    if (fault === 'cut-short' && this.faulty === 1) return false;
    await folder.dropPart(this.name);
    if (fault === 'too-large') throw unpacksTooLarge(this.title);
    if (this.faulty >= MOST_FAULTY) throw damagedPacking(this.title, fault);
    return false;
  }

  private refuseOffline(answer: PartAnswer, attempt: number): void {
    if (answer.kind !== 'again' || answer.offline === null) return;
    const most = NO_NETWORK.test(answer.offline) ? MOST_OFFLINE : this.deps.options.attempts;
    if (attempt >= most) throw unreachable(new URL(this.url).host, answer.offline);
  }

  private async pause(attempt: number, askedMs: number | null): Promise<void> {
    const { options, queue, signal } = this.deps;
    const { clock, mostAskedWaitMs } = options;
    if (askedMs !== null && askedMs > mostAskedWaitMs) throw asksToWait(this.title, askedMs, mostAskedWaitMs);
    const waitMs = Math.max(askedMs ?? 0, backOffMs(attempt, options.random(), options));
    if (clock.now() + waitMs >= this.endAt) throw tookTooLong(this.title, options.totalMs);
    if (askedMs !== null) queue.holdOff(askedMs);
    await this.waiting(clock.wait(waitMs, signal));
  }

  /** A wait, which the user may cut short. */
  private async waiting(wait: Promise<void>): Promise<void> {
    try {
      await wait;
    } catch (error) {
      throw this.deps.signal?.aborted ? stopped() : error;
    }
  }

  private downloaded(unchanged: boolean): Downloaded {
    return { path: this.deps.folder.pathOf(this.name), place: this.place, unchanged };
  }
}
