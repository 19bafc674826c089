import { saveFile, saveSvg, saveTable } from '../charts/saveFile.ts';
import type { Units } from '../units/units.ts';
import { mapSvg } from './mapSvg.ts';
import { fileColumns, geoJsonOf, regionStem } from './regionFiles.ts';
import type { RegionAnswer } from './useRegion.ts';

interface RegionFilesProps {
  readonly answer: RegionAnswer;
  readonly caption: string;
  readonly units: Units;
}

/** Map and stations as files to keep. */
export function RegionFiles({ answer, caption, units }: RegionFilesProps) {
  const { start, rows } = answer;
  const stem = regionStem(answer);
  const source = `${start.residual} before ${start.crop}, planted ${start.question.plantOn}. An estimate; the label is the floor.`;
  const saveMap = (event: { currentTarget: HTMLElement }) => {
    const drawn = event.currentTarget.closest('figure')?.querySelector<SVGSVGElement>('.region-map svg');
    if (drawn) saveSvg(`${stem}.svg`, mapSvg(drawn, caption, source), caption);
  };
  return (
    <>
      <button
        type="button"
        class="quiet"
        data-testid="region-csv"
        onClick={() => saveTable(`${stem}.csv`, fileColumns(rows, units), rows)}
      >
        CSV
      </button>
      <button
        type="button"
        class="quiet"
        data-testid="region-geojson"
        onClick={() => saveFile(`${stem}.geojson`, geoJsonOf(answer), 'application/geo+json')}
      >
        GeoJSON
      </button>
      <button type="button" class="quiet" data-testid="region-svg" onClick={saveMap}>
        SVG
      </button>
    </>
  );
}
