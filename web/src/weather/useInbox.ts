import { useCallback, useRef, useState } from 'preact/hooks';
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

/** Files on their way into the store. */
export interface Inbox {
  readonly files: readonly GivenFile[];
  readonly busy: boolean;
  readonly add: (files: readonly File[]) => void;
  readonly again: (key: number) => void;
  readonly stop: () => void;
  /** Takes those that are done off the list. */
  readonly clear: () => void;
}

const OVER: ReadonlySet<FileState['kind']> = new Set(['stopped', 'list-kept', 'imported', 'failed']);

/**
 * Sends files one after the other, station lists first.
 * @param options what the user says about files that do not say it themselves, as they stand when a file is sent
 * @param imported called after each file that changed the store
 */
export function useInbox(options: ReadOptions, imported: () => void): Inbox {
  const [files, setFiles] = useState<readonly GivenFile[]>([]);
  const queue = useRef<readonly GivenFile[]>([]);
  const latest = useRef({ options, imported });
  latest.current = { options, imported };
  const counter = useRef(0);
  const running = useRef(false);

  const set = useCallback((next: readonly GivenFile[]) => {
    queue.current = next;
    setFiles(next);
  }, []);
  const mark = useCallback(
    (key: number, state: FileState) =>
      set(queue.current.map((given) => (given.key === key ? { ...given, state } : given))),
    [set],
  );

  const run = useCallback(async () => {
    if (running.current) return;
    running.current = true;
    for (;;) {
      const next = queue.current.find(({ state }) => state.kind === 'waiting');
      if (next === undefined) break;
      mark(next.key, { kind: 'sending' });
      const state = await become(next.file, latest.current.options, (now) => mark(next.key, now));
      mark(next.key, state);
      if (state.kind === 'imported') latest.current.imported();
    }
    running.current = false;
  }, [mark]);

  const add = useCallback(
    (given: readonly File[]) => {
      const lists = given.filter(({ name }) => STATION_LIST.test(name));
      const rest = given.filter((file) => !lists.includes(file));
      const fresh = [...lists, ...rest].map(
        (file): GivenFile => ({ key: ++counter.current, file, state: { kind: 'waiting' } }),
      );
      set([...queue.current, ...fresh]);
      void run();
    },
    [set, run],
  );
  const again = useCallback(
    (key: number) => {
      mark(key, { kind: 'waiting' });
      void run();
    },
    [mark, run],
  );
  const stop = useCallback(() => {
    set(
      queue.current.map((given) =>
        given.state.kind === 'waiting' ? { ...given, state: { kind: 'stopped' } } : given,
      ),
    );
    void stopImport();
  }, [set]);
  const clear = useCallback(() => set(queue.current.filter(({ state }) => !OVER.has(state.kind))), [set]);
  return { files, busy: files.some(({ state }) => !OVER.has(state.kind)), add, again, stop, clear };
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
