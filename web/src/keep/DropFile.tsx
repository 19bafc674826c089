import { useEffect, useRef, useState } from 'preact/hooks';

interface DropFileProps {
  readonly words: string;
  /** Endings that the chooser offers, such as ".csv". */
  readonly accept: string;
  readonly testId: string;
  readonly take: (file: File) => void;
}

/** One file, dropped here or chosen. */
export function DropFile({ words, accept, testId, take }: DropFileProps) {
  const chooser = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
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
  const given = (files: FileList | null | undefined) => {
    if (files?.[0]) take(files[0]);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the button inside does the same by keyboard
    <div
      class="drop-file"
      data-over={over ? '' : undefined}
      data-testid={`${testId}-drop`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        given(event.dataTransfer?.files);
      }}
    >
      <span>{words}</span>
      <button type="button" class="small-button" onClick={() => chooser.current?.click()}>
        Choose the file
      </button>
      <input
        ref={chooser}
        type="file"
        accept={accept}
        hidden
        data-testid={testId}
        onChange={({ currentTarget }) => {
          given(currentTarget.files);
          currentTarget.value = '';
        }}
      />
    </div>
  );
}
