import { dotsFinding, rainFinding, seasonFinding } from '../../chart/findings.ts';
import type { ChartSpec } from '../../chart/frame.ts';
import { dotsLegend, RAIN_KEYS, SEASON_KEYS } from '../../chart/legends.ts';
import { oddsSeason } from '../../chart/oddsSeason.ts';
import { dotRows, quantileDots } from '../../chart/quantileDots.ts';
import { rainMonths } from '../../chart/rainMonths.ts';
import { type Ruler, rulerEnds } from '../../chart/ruler.ts';
import { PAGE_TOKENS } from '../../chart/theme.ts';
import type { Answer } from '../../schema/answer.ts';
import { inchesFromMm } from '../../units.ts';
import type { Say } from '../say.ts';

/** A drawing of the file, for a phone and for a wider page. */
export interface Figure {
  readonly name: 'dots' | 'season' | 'rain';
  /** What it shows, as a finding. */
  readonly caption: string;
  /** How it is read, in a sentence; null where its keys say it. */
  readonly legend: string | null;
  readonly keys: readonly { readonly key: string; readonly words: string }[];
  /** Text of an SVG, as wide as its name says. */
  readonly narrowSvg: string;
  readonly wideSvg: string;
}

/** Width of the drawings: a phone of 360 px less its margins, and a printed page. [px] */
const NARROW_PX = 328;
const WIDE_PX = 640;
/** Room left and right of the ruler. [px] */
const LEFT_PX = 36;
const RIGHT_PX = 14;

/** The drawings of an answer, all on one ruler of dates; none where it has no curves. */
export async function figuresOf(answer: Answer, say: Say): Promise<Figure[]> {
  const { season } = answer;
  if (season === undefined) return [];
  // Drawing code is large and needed by few commands.
  const { svgOf } = await import('../../chart/svgOf.ts');
  const drawn = async (figure: Drawn) => ({
    ...figure.told,
    narrowSvg: await svgOf(figure.draw(NARROW_PX)),
    wideSvg: await svgOf(figure.draw(WIDE_PX)),
  });
  return Promise.all(drawingsOf(answer, season, say).map(drawn));
}

interface Drawn {
  readonly told: Omit<Figure, 'narrowSvg' | 'wideSvg'>;
  readonly draw: (widthPx: number) => ChartSpec;
}

function drawingsOf(answer: Answer, season: NonNullable<Answer['season']>, say: Say): Drawn[] {
  const { labelDate, clearDate, oddsAtPlanting, inputs, weather } = answer;
  const { plantOn, oddsLimit } = inputs.question;
  const rulerOf = (widthPx: number): Ruler => ({
    ...rulerEnds(answer, season.startDate, plantOn),
    widthPx: widthPx - LEFT_PX - RIGHT_PX,
    leftPx: LEFT_PX,
    rightPx: RIGHT_PX,
    dateStyle: say.wording.dates,
  });
  const marks = { plantOn, labelDate, clearDate };
  const around = (widthPx: number, description: string) => ({
    tokens: PAGE_TOKENS,
    description,
    ruler: rulerOf(widthPx),
    marks,
  });
  const dots = dotsFinding(season, plantOn, inputs.crop, say.dates);
  const curves = seasonFinding(season, answer, say.dates);
  const rain = rainFinding(season, weather.observedThrough, say.water, say.dates);
  const lastRain = [weather.observedThrough ?? plantOn, plantOn].sort()[1];
  return [
    {
      told: { name: 'dots', caption: dots, legend: dotsLegend(clearDate), keys: [] },
      draw: (widthPx) =>
        quantileDots(dotRows(season), {
          ...around(widthPx, dots),
          oddsAtPlanting: oddsAtPlanting ?? 0,
          monthsNamed: true,
        }),
    },
    {
      told: { name: 'season', caption: curves, legend: null, keys: SEASON_KEYS },
      draw: (widthPx) => oddsSeason(season, { ...around(widthPx, curves), oddsLimit }),
    },
    {
      told: { name: 'rain', caption: rain, legend: null, keys: RAIN_KEYS },
      draw: (widthPx) =>
        rainMonths(season.rain.months, {
          ...around(widthPx, rain),
          rainUnit: say.wording.units === 'us' ? 'in' : 'mm',
          rainIn: (mm) => (say.wording.units === 'us' ? inchesFromMm(mm) : mm),
          season: { from: season.startDate, to: lastRain },
        }),
    },
  ];
}
