import { useEffect, useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { FieldList as Fields, StationExtent, StoredField } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { FilesPanel } from '../keep/FilesPanel.tsx';
import { JustRemoved } from '../keep/JustRemoved.tsx';
import { RemovedList } from '../keep/RemovedList.tsx';
import { Fold } from '../shell/Fold.tsx';
import type { Units } from '../units/units.ts';
import { BackupPanel } from './BackupPanel.tsx';
import { FieldTable } from './FieldTable.tsx';
import { ListPanel } from './list/ListPanel.tsx';
import { NewField } from './NewField.tsx';
import { RefreshPanel } from './RefreshPanel.tsx';
import { ShortCaution } from './ShortCaution.tsx';
import { useFieldAnswers } from './useFieldAnswers.ts';

const NONE: readonly StoredField[] = [];

/** All fields by farm, what can be done with all of them, and how a new one begins. */
export function FieldList({ units }: { units: Units }) {
  const list = useFetched<Fields>('/api/fields');
  const stations = useFetched<{ stations: StationExtent[] }>('/api/stations');
  const [round, setRound] = useState(0);
  const fields = list.data?.fields ?? NONE;
  const { answers, gone } = useFieldAnswers(fields, round);
  useEffect(() => {
    document.title = 'Fields · Drywake';
  }, []);
  const names = new Map(stations.data?.stations.map(({ id, name }) => [id, name]));
  const farms = [...new Set(fields.map(({ record }) => record.farm))];
  const taken = [...fields.map(({ record }) => record.id), ...(list.data?.removed ?? []).map(({ id }) => id)];
  return (
    <main class="lone fields-place">
      <h1 class="place-title">Fields</h1>
      <p class="lede" data-testid="field-count">
        {list.data ? saySome(fields) : 'Reading the fields…'}
      </p>
      {(list.gone || gone) && <GoneNote retry={list.gone ? list.reload : undefined} />}
      {list.problem && <ProblemNote problem={list.problem} />}
      {list.data && (
        <JustRemoved shelf="/api/fields" noun="field" removed={list.data.removed} back={list.reload} />
      )}
      {fields.length > 0 && (
        <RefreshPanel
          fields={fields}
          done={() => {
            list.reload();
            setRound((before) => before + 1);
          }}
        />
      )}
      {farms.map((farm) => (
        <FieldTable
          key={farm}
          farm={farm}
          fields={fields.filter(({ record }) => record.farm === farm)}
          answers={answers}
          stationNames={names}
          units={units}
        />
      ))}
      {fields.length > 0 && <ShortCaution />}
      {list.data && (
        <>
          <NewField taken={taken} farms={farms} isFirst={fields.length === 0} />
          <div class="folds">
            <Fold title="Fields as a table: out and in">
              {() => (
                <FilesPanel
                  path="/api/fields.csv"
                  noun="field"
                  nouns="fields"
                  units={units}
                  imported={list.reload}
                />
              )}
            </Fold>
            <Fold title="A list of fields, answered and ranked">{() => <ListPanel units={units} />}</Fold>
            <Fold title="Backup and restore of everything">
              {() => <BackupPanel restored={list.reload} />}
            </Fold>
            {list.data.removed.length > 0 && (
              <Fold title={`Removed fields (${list.data.removed.length})`}>
                {() => (
                  <RemovedList shelf="/api/fields" removed={list.data?.removed ?? []} back={list.reload} />
                )}
              </Fold>
            )}
          </div>
          <p class="small">
            Products of your own shed, as their labels have them, are among <a href="/labels">your labels</a>.
          </p>
        </>
      )}
    </main>
  );
}

function saySome(fields: readonly StoredField[]): string {
  if (fields.length === 0) {
    return 'No field is kept yet. A field holds its soil, what was sprayed, what fell on it and what is to be sown, and answers all winter.';
  }
  const some =
    fields.length === 1 ? 'One field, with' : `${fields.length.toLocaleString('en-US')} fields, each with`;
  return `${some} the crop that comes next. The odds are those of carryover harm on its planting date.`;
}
