import { useEffect, useState } from 'preact/hooks';
import type { Answer } from '../api/contract.ts';
import { GoneError, RefusedError, requestFile } from '../api/requestJson.ts';
import { saveFile } from '../charts/saveFile.ts';
import { useWording } from '../units/useDates.ts';

interface SaveOneFileProps {
  readonly answer: Answer;
  /** Id of the kept field whose names stand on it; null for none. */
  readonly field: string | null;
}

/** Saves an answer as one file that opens on a phone without any server. */
export function SaveOneFile({ answer, field }: SaveOneFileProps) {
  const wording = useWording();
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<string | null>(null);
  useEffect(() => setFailed(null), [answer, field]);
  async function save(): Promise<void> {
    setBusy(true);
    setFailed(null);
    try {
      const query = new URLSearchParams(wording);
      if (field !== null) query.set('field', field);
      const { name, text } = await requestFile(`/api/sheet/file?${query}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(answer.inputs.question),
      });
      saveFile(name, text, 'text/html;charset=utf-8');
    } catch (error) {
      if (!(error instanceof RefusedError || error instanceof GoneError)) throw error;
      setFailed(error.message);
    } finally {
      setBusy(false);
    }
  }
  return (
    <>
      <button type="button" class="small-button" data-testid="save-file" disabled={busy} onClick={save}>
        {busy ? 'Writing the file…' : 'Save this answer as one file'}
      </button>
      {failed && (
        <span role="alert" data-testid="save-file-failed">
          Not saved: {failed}
        </span>
      )}
    </>
  );
}
