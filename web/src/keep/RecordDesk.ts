import type { Problem, Removed } from '../api/contract.ts';
import { RefusedError } from '../api/requestJson.ts';
import { dropDraft, keepDraft, keptDraft } from './drafts.ts';
import { sameRecord } from './sameRecord.ts';
import {
  fetchRecord,
  type Kept,
  keptInRefusal,
  putRecord,
  removeRecord,
  type ShelfPath,
  undoRecord,
} from './shelf.ts';

/** How a record under the pen stands. */
export interface DeskState<T> {
  /** As the server keeps it; null before it has come. */
  readonly kept: Kept<T> | null;
  /** As it stands on the page. */
  readonly record: T | null;
  readonly typed: Readonly<Record<string, string>>;
  /** Why the server does not take it. */
  readonly refusal: Problem | null;
  /** What another window has made of it meanwhile. */
  readonly theirs: Kept<T> | null;
  readonly sending: boolean;
  readonly gone: boolean;
  /** The last thing done was an undo, so that the next undo brings the change back. */
  readonly undone: boolean;
}

/** Time before a server that is gone is asked again. [ms] */
const RETRY_MS = 3000;

const NOTHING = {
  kept: null,
  record: null,
  typed: {},
  refusal: null,
  theirs: null,
  sending: false,
  gone: false,
  undone: false,
};

/**
 * A record under the pen. Each change is kept in the browser at once and sent to the server with the version that it
 * began from; where another window was faster, both stand until the user chooses.
 */
export class RecordDesk<T extends { readonly id: string }> {
  state: DeskState<T> = NOTHING;
  private readonly path: string;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private closed = false;
  /** Version that the record on the page began from. */
  private began: number | null = null;

  constructor(
    private readonly shelf: ShelfPath,
    private readonly id: string,
    private readonly tell: (state: DeskState<T>) => void,
  ) {
    this.path = `${shelf}/${id}`;
  }

  /** Fetches the record and takes up what was left of it in the browser. */
  async open(): Promise<void> {
    await this.ask(async () => {
      const kept = await fetchRecord<T>(this.shelf, this.id);
      const draft = keptDraft<T>(this.path);
      const changed = draft?.record != null && !sameRecord(draft.record, kept.record);
      const record = changed ? draft.record : kept.record;
      this.began = changed ? draft.version : kept.version;
      this.set({ kept, record, typed: draft?.typed ?? {} });
      if (!changed) this.write();
      else if (draft.version !== kept.version) this.set({ theirs: kept });
    });
    if (this.isChanged()) await this.send();
  }

  /** Lets go; what the server has not taken stays in the browser. */
  close(): void {
    this.closed = true;
    clearTimeout(this.timer);
  }

  change(part: Partial<T>): void {
    const { record } = this.state;
    if (record === null) return;
    this.set({ record: { ...record, ...part }, refusal: null, undone: false });
    this.write();
    void this.send();
  }

  keepTyped(field: string, text: string | null): void {
    const { [field]: _, ...rest } = this.state.typed;
    this.set({ typed: text === null ? rest : { ...rest, [field]: text } });
    this.write();
  }

  /** Texts that could not be read belong to places in a list, and places move up. */
  forgetTyped(prefix: string): void {
    const rest = Object.entries(this.state.typed).filter(([field]) => !field.startsWith(prefix));
    this.set({ typed: Object.fromEntries(rest) });
    this.write();
  }

  /** Puts the record of this page in the place of what another window has kept. */
  async keepMine(): Promise<void> {
    const { theirs } = this.state;
    if (theirs === null) return;
    this.began = theirs.version;
    this.set({ kept: theirs, theirs: null });
    this.write();
    await this.send();
  }

  /** Lets the changes of this page go. */
  takeTheirs(): void {
    const { theirs } = this.state;
    if (theirs === null) return;
    this.began = theirs.version;
    this.set({ kept: theirs, record: theirs.record, theirs: null, typed: {}, refusal: null });
    this.write();
  }

  /** Takes the last change back; a second time brings it again. */
  async undo(): Promise<void> {
    const { kept, undone } = this.state;
    if (kept === null || this.isChanged()) return;
    await this.ask(async () => {
      const before = await undoRecord<T>(this.shelf, this.id, kept.version);
      this.began = before.version;
      this.set({ kept: before, record: before.record, typed: {}, undone: !undone });
      this.write();
    });
  }

  /** Removes the record; null where that did not come about. */
  async remove(): Promise<Removed | null> {
    const { kept } = this.state;
    if (kept === null) return null;
    let removed: Removed | null = null;
    await this.ask(async () => {
      removed = await removeRecord(this.shelf, this.id, kept.version);
      dropDraft(this.path);
    });
    return removed;
  }

  /** Whether the page holds what the server does not. */
  isChanged(): boolean {
    const { kept, record } = this.state;
    return kept !== null && record !== null && !sameRecord(kept.record, record);
  }

  /** Sends what has changed, one version after the other. */
  async send(): Promise<void> {
    const { kept, record, theirs, sending } = this.state;
    if (kept === null || record === null || theirs !== null || sending) return;
    if (!this.isChanged() && !kept.removed) {
      this.write();
      return;
    }
    await this.ask(async () => {
      const sent = await putRecord(this.shelf, record, kept.version);
      const later = this.state.record !== record;
      this.began = sent.version;
      this.set({ kept: sent, ...(!later && { record: sent.record }) });
      this.write();
    });
    if (this.state.record !== record && this.state.refusal === null && !this.state.gone) {
      if (this.isChanged()) await this.send();
    }
  }

  private async ask(work: () => Promise<void>): Promise<void> {
    clearTimeout(this.timer);
    this.set({ sending: true });
    try {
      await work();
      this.set({ sending: false, gone: false, refusal: null });
    } catch (error) {
      const theirs = keptInRefusal<T>(error);
      if (theirs !== null) this.meet(theirs);
      else if (error instanceof RefusedError) {
        this.set({ refusal: error.problem, sending: false, gone: false });
      } else {
        this.set({ sending: false, gone: true });
        if (!this.closed) this.timer = setTimeout(() => this.again(), RETRY_MS);
      }
    }
  }

  /** Takes up what is kept by now: another window was faster, or it is what was sent from here and its answer was lost. */
  private meet(theirs: Kept<T>): void {
    const meant =
      this.state.record !== null && !theirs.removed && sameRecord(theirs.record, this.state.record);
    if (!meant) {
      this.set({ theirs, sending: false, gone: false });
      return;
    }
    this.began = theirs.version;
    this.set({ kept: theirs, sending: false, gone: false, refusal: null });
    this.write();
  }

  /** Asks the server that was gone once more. */
  again(): void {
    void (this.isChanged() ? this.send() : this.open());
  }

  private write(): void {
    const { record, typed } = this.state;
    const changed = this.isChanged();
    if (!changed && Object.keys(typed).length === 0) dropDraft(this.path);
    else keepDraft<T>(this.path, { version: this.began, record: changed ? record : null, typed });
  }

  private set(part: Partial<DeskState<T>>): void {
    this.state = { ...this.state, ...part };
    if (!this.closed) this.tell(this.state);
  }
}
