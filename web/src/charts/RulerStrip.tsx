import { useRef } from 'preact/hooks';
import { MS_PER_DAY, msOf } from '../../../src/chart/dateMs.ts';
import { type Ruler, rulerPx, rulerTicks } from '../../../src/chart/ruler.ts';
import { dayOf, isoOf } from '../question/calendar.ts';
import { useDates } from '../units/useDates.ts';
import type { MarkerMoves } from './useMarker.ts';

interface RulerStripProps {
  readonly ruler: Ruler;
  readonly plantOn: string;
  readonly earliest: string;
  /** Odds on the planting date in words. */
  readonly oddsText: string;
  readonly moves: MarkerMoves;
}

const WEEK = 7;
/** Width of the marker’s grip, as the style sheet has it. [px] */
const GRIP_PX = 28;

/** The date ruler under the dots: months, and the planting marker that slides along it. */
export function RulerStrip({ ruler, plantOn, earliest, oddsText, moves }: RulerStripProps) {
  const dates = useDates();
  const undo = useRef<string | null>(null);
  const first = Math.round(ruler.fromMs / MS_PER_DAY);
  const last = Math.round(ruler.toMs / MS_PER_DAY);
  const day = dayOf(plantOn);
  // Shares of the whole width, so that the strip keeps to the drawing above it when both are scaled for print.
  const share = (px: number) => `${(px / (ruler.leftPx + ruler.widthPx + ruler.rightPx)) * 100}%`;
  const at = (ms: number) => ruler.leftPx + rulerPx(ruler, ms);
  const place = (element: HTMLElement | null, leftPx: number, widthPx?: number) => {
    if (element === null) return;
    element.style.left = share(leftPx);
    if (widthPx !== undefined) element.style.width = share(widthPx);
  };

  function key(event: KeyboardEvent): void {
    const step = { PageUp: WEEK, PageDown: -WEEK }[event.key];
    if (event.key === 'Escape' && undo.current !== null) {
      moves.commit(undo.current);
      undo.current = null;
    } else if (step !== undefined) {
      undo.current ??= plantOn;
      moves.commit(isoOf(Math.max(dayOf(earliest), Math.min(last, day + step))));
    } else return;
    event.preventDefault();
  }

  return (
    <div class="strip">
      <div class="strip-months" aria-hidden="true">
        {rulerTicks(ruler).map(({ ms, name, year }) => (
          <span key={ms} ref={(element) => place(element, at(ms))}>
            {name}
            {year !== null && <small>{year}</small>}
          </span>
        ))}
      </div>
      <div class="strip-rail" ref={(element) => place(element, ruler.leftPx, ruler.widthPx)} />
      <div class="strip-stem" ref={(element) => place(element, at(msOf(plantOn)))} />
      <input
        class="strip-slider"
        type="range"
        aria-label="Planting date"
        data-testid="plant-slider"
        min={first}
        max={last}
        step={1}
        value={day}
        aria-valuetext={`${dates.full(plantOn)}, ${oddsText}`}
        ref={(element) => place(element, ruler.leftPx - GRIP_PX / 2, ruler.widthPx + GRIP_PX)}
        onFocus={() => {
          undo.current = plantOn;
        }}
        onKeyDown={key}
        onInput={(event) => moves.drag(isoOf(Math.max(dayOf(earliest), Number(event.currentTarget.value))))}
        onChange={() => moves.release()}
      />
    </div>
  );
}
