import type { ImportEvent, ReadOptions } from '../api/contract.ts';
import { RefusedError } from '../api/requestJson.ts';
import { sendFile, stopImport } from './sendFile.ts';

/** Largest file that the server takes. [bytes] */
const MOST_BYTES = 300e6;
const STATION_LIST = /^ghcnd-stations\.txt(\.gz)?$/i;

type Imported = Extract<ImportEvent, { step: 'done' }>['summary']['files'][number];

/** How a file that was given stands. */
export type FileState =
  | { readonly kind: 'waiting' | 'sending' | 'stopped' | 'list-kept' }
  | { readonly kind: 'reading'; readonly fractionDone: number }
  | { readonly kind: 'imported'; readonly stations: Imported['stations'] }
  | { readonly kind: 'failed'; readonly code: string; readonly message: string; readonly hint: string };

/** A file that was given, and how it stands. */
export interface GivenFile {
  readonly key: number;
  readonly file: File;
  readonly state: FileState;
}

const OVER: ReadonlySet<FileState['kind']> = new Set(['stopped', 'list-kept', 'imported', 'failed']);

/** Whether nothing more will become of a file by itself. */
export const isOver = ({ state }: GivenFile): boolean => OVER.has(state.kind);

/** The files that were given, and what the user says about them; they outlive the view that shows them. */
export interface InboxState {
  readonly files: readonly GivenFile[];
  /** Holds for the files that are sent from now on. */
  readonly options: ReadOptions;
  /** Files that have changed the store so far. */
  readonly imported: number;
}

let present: InboxState = { files: [], options: {}, imported: 0 };
let lastKey = 0;
let running = false;
const listeners = new Set<(state: InboxState) => void>();

export const presentInbox = (): InboxState => present;

/** Calls back at every change. */
export function watchInbox(listen: (state: InboxState) => void): () => void {
  listeners.add(listen);
  return () => void listeners.delete(listen);
}

/** Sends files one after the other, station lists first. */
export function addFiles(given: readonly File[]): void {
  const lists = given.filter(({ name }) => STATION_LIST.test(name));
  const rest = given.filter((file) => !lists.includes(file));
  const fresh = [...lists, ...rest].map(
    (file): GivenFile => ({ key: ++lastKey, file, state: { kind: 'waiting' } }),
  );
  set({ files: [...present.files, ...fresh] });
  void run();
}

/** Sends a file again. */
export function sendAgain(key: number): void {
  mark(key, { kind: 'waiting' });
  void run();
}

/** Stops the file under way and those that wait. */
export function stopFiles(): void {
  const stopped: FileState = { kind: 'stopped' };
  set({
    files: present.files.map((given) =>
      given.state.kind === 'waiting' ? { ...given, state: stopped } : given,
    ),
  });
  void stopImport();
}

/** Takes those that are done off the list. */
export const clearFiles = (): void => set({ files: present.files.filter((given) => !isOver(given)) });

export const sayOptions = (options: ReadOptions): void => set({ options });

function set(part: Partial<InboxState>): void {
  present = { ...present, ...part };
  for (const listen of listeners) listen(present);
}

const mark = (key: number, state: FileState): void =>
  set({ files: present.files.map((given) => (given.key === key ? { ...given, state } : given)) });

async function run(): Promise<void> {
  if (running) return;
  running = true;
  for (;;) {
    const next = present.files.find(({ state }) => state.kind === 'waiting');
    if (next === undefined) break;
    mark(next.key, { kind: 'sending' });
    const state = await become(next.file, present.options, (now) => mark(next.key, now));
    mark(next.key, state);
    if (state.kind === 'imported') set({ imported: present.imported + 1 });
  }
  running = false;
}

/** Sends a file and gives what became of it. */
async function become(
  file: File,
  options: ReadOptions,
  progress: (state: FileState) => void,
): Promise<FileState> {
  if (file.size > MOST_BYTES) {
    return {
      kind: 'failed',
      code: 'FILE_TOO_LARGE',
      message: `${file.name} is larger than ${MOST_BYTES / 1e6} MB.`,
      hint: 'Import it with “drywake weather import”, which has no such limit.',
    };
  }
  let state: FileState = { kind: 'stopped' };
  try {
    await sendFile(file, options, (event) => {
      state = stateAfter(event);
      if (event.step === 'reading') progress(state);
    });
    return state;
  } catch (error) {
    if (error instanceof RefusedError) return refused(error.problem);
    return {
      kind: 'failed',
      code: 'SERVER_GONE',
      message: `${file.name} could not be sent: the program does not answer, or the file can no longer be read.`,
      hint: 'See whether the program still runs, then send it again.',
    };
  }
}

function stateAfter(event: ImportEvent): FileState {
  if (event.step === 'reading') return { kind: 'reading', fractionDone: event.fractionDone };
  if (event.step === 'list-kept') return { kind: 'list-kept' };
  if (event.step === 'refused') return refused(event.problem);
  const [file] = event.summary.files;
  if (event.summary.stopped || file === undefined) return { kind: 'stopped' };
  return file.problem ? { kind: 'failed', ...file.problem } : { kind: 'imported', stations: file.stations };
}

function refused({ code, message, hint }: { code: string; message: string; hint: string }): FileState {
  return code === 'IMPORT_STOPPED' ? { kind: 'stopped' } : { kind: 'failed', code, message, hint };
}
