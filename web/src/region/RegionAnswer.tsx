import { Skeleton } from '../answer/Skeleton.tsx';
import { PlainCautions } from '../compare/PlainCautions.tsx';
import { AnswerHead } from '../shell/AnswerHead.tsx';
import { CopyLink } from '../shell/CopyLink.tsx';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { MeasureSwitch } from './MeasureSwitch.tsx';
import { usualMeasure } from './measures.ts';
import { RegionFiles } from './RegionFiles.tsx';
import { RegionMap } from './RegionMap.tsx';
import { RegionProgress } from './RegionProgress.tsx';
import { RegionTable } from './RegionTable.tsx';
import { leftOut, type RegionAsked } from './regionAddress.ts';
import { mapFinding, type RegionFinding, stationInWords } from './regionWords.ts';
import { SilentStations } from './SilentStations.tsx';
import { StationNumbers } from './StationNumbers.tsx';
import type { RegionRun } from './useRegion.ts';

interface RegionAnswerProps {
  readonly run: RegionRun;
  readonly finding: RegionFinding | null;
  readonly asked: RegionAsked;
  readonly units: Units;
  readonly stale: string | null;
  /** Stations that are here. */
  readonly count: number;
  readonly look: (part: Partial<RegionAsked>) => void;
}

/** Where a residual is still there: in a sentence, on the map, and station by station. */
export function RegionAnswer({ run, finding, asked, units, stale, count, look }: RegionAnswerProps) {
  const dates = useDates();
  const { answer, phase } = run;
  const { question, pick } = asked;
  const unsaid = leftOut(question);
  if (answer === null || finding === null) {
    return (
      <>
        {phase === 'asking' && <Skeleton />}
        <RegionProgress run={run} count={count} />
      </>
    );
  }
  const { start, rows } = answer;
  const show = asked.show ?? usualMeasure(rows);
  const { oddsLimit } = start.question;
  const picked = rows.find(({ station }) => station === pick) ?? null;
  const caption = mapFinding(rows, show, oddsLimit);
  const choose = (station: string | null) => look({ pick: station });
  return (
    <article class="answer region" data-stale={stale === null ? undefined : ''}>
      <AnswerHead stale={stale} sentence={finding.head} rest={finding.rest} />
      <RegionProgress run={run} count={count} />
      {unsaid.length > 0 && (
        <p class="small" data-testid="left-out">
          Not reckoned with here, since it belongs to one field: {unsaid.join(', ')}.
        </p>
      )}
      <figure class="chart region-figure" data-testid="region-figure">
        <figcaption>{caption}</figcaption>
        <MeasureSwitch show={show} choose={(measure) => look({ show: measure })} />
        <RegionMap
          rows={rows}
          show={show}
          oddsLimit={oddsLimit}
          caption={caption}
          picked={picked}
          pick={choose}
          inWords={(row) => stationInWords(row, units, dates)}
        />
        <StationNumbers picked={picked} question={question} units={units} />
        <div class="do-row chart-tools">
          <RegionFiles answer={answer} caption={caption} units={units} />
          <CopyLink />
        </div>
      </figure>
      <RegionTable rows={rows} show={show} units={units} picked={pick} pick={choose} dates={dates} />
      <SilentStations rows={rows} />
      <PlainCautions cautions={start.cautions} />
      <p class="small">
        {start.model.name}, version {start.model.version}.
      </p>
    </article>
  );
}
