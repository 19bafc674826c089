import { useEffect, useRef, useState } from 'preact/hooks';
import { Fold } from '../shell/Fold.tsx';
import { FileLine } from './FileLine.tsx';
import { addFiles, clearFiles, isOver, sayOptions, sendAgain, stopFiles } from './inboxQueue.ts';
import { ReadOptionBlanks } from './ReadOptionBlanks.tsx';
import { useInbox } from './useInbox.ts';

/** Files are dropped or chosen here and imported one after the other. */
export function InboxPanel({ imported }: { imported: () => void }) {
  const { files, options } = useInbox(imported);
  const busy = files.some((given) => !isOver(given));
  const chooser = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const [folder, setFolder] = useState(false);

  // A file that misses the zone must not replace the page.
  useEffect(() => {
    const keep = (event: DragEvent) => event.preventDefault();
    window.addEventListener('dragover', keep);
    window.addEventListener('drop', keep);
    return () => {
      window.removeEventListener('dragover', keep);
      window.removeEventListener('drop', keep);
    };
  }, []);

  function dropped({ dataTransfer }: DragEvent): void {
    setOver(false);
    const items = [...(dataTransfer?.items ?? [])];
    setFolder(items.some((item) => item.webkitGetAsEntry?.()?.isDirectory));
    const given = items
      .filter((item) => !item.webkitGetAsEntry?.()?.isDirectory)
      .map((item) => item.getAsFile());
    addFiles(given.filter((file) => file !== null));
  }

  const said = files.filter(({ state }) => state.kind === 'imported').length;
  return (
    <section class="inbox" aria-labelledby="inbox-title">
      <h2 class="margin-title" id="inbox-title">
        Bring in records
      </h2>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the button inside does the same by keyboard */}
      <div
        class="drop"
        data-over={over ? '' : undefined}
        data-testid="drop"
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          dropped(event);
        }}
      >
        <p>Drop weather files here, or</p>
        <button type="button" class="small-button" onClick={() => chooser.current?.click()}>
          Choose files
        </button>
        <input
          ref={chooser}
          type="file"
          multiple
          hidden
          data-testid="files"
          onChange={({ currentTarget }) => {
            addFiles([...(currentTarget.files ?? [])]);
            currentTarget.value = '';
          }}
        />
        <p class="small">
          Daily records as .dly or .csv, plain or .gz, up to 300 MB. They stay on this computer. A station
          list (ghcnd-stations.txt) sent with them gives names and positions.
        </p>
      </div>
      {folder && <p class="note">A folder cannot be taken as a whole: open it and drop the files in it.</p>}
      {files.length > 0 && (
        <>
          <ul class="given">
            {files.map((given) => (
              <FileLine key={given.key} given={given} again={() => sendAgain(given.key)} />
            ))}
          </ul>
          <p class="given-do">
            {busy ? (
              <button type="button" class="small-button" data-testid="stop" onClick={stopFiles}>
                Stop
              </button>
            ) : (
              <button type="button" class="quiet" onClick={clearFiles}>
                Clear the list
              </button>
            )}
          </p>
        </>
      )}
      <p class="unseen" role="status">
        {!busy && files.length > 0 && `${said} of ${files.length} files imported.`}
      </p>
      <Fold title="What the files do not say">
        {() => <ReadOptionBlanks options={options} change={sayOptions} />}
      </Fold>
    </section>
  );
}
