import { hindcastYear } from '../analysis/hindcast.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import { batchAnswer } from './batchAnswer.ts';
import { createClimateCache } from './climateCache.ts';
import { prepareHindcast } from './hindcast.ts';
import type { KeptClimates } from './keptClimates.ts';
import { labelsAsBook } from './labelBook.ts';
import { packedReader } from './packedWeather.ts';
import { regionOfStation, resolveRegion } from './regionOfStation.ts';
import { sharedSeasons } from './sharedSeasons.ts';
import type { WorkResults, WorkTask } from './workshop.ts';

/**
 * Does one task, with nothing but what stands in it and the catalogue.
 * @param kept climates of earlier tasks of the same list
 */
export async function doTask(
  task: WorkTask,
  catalogue: Catalogue,
  kept: KeptClimates,
): Promise<WorkResults[WorkTask['kind']]> {
  switch (task.kind) {
    case 'region': {
      const region = resolveRegion(task.question, catalogue);
      return task.stations.map((station) => regionOfStation(station, region));
    }
    case 'batch': {
      const climates = kept.of(task.weatherId, task.weather);
      const deps = { catalogue, climates, labels: labelsAsBook(task.labels), seasons: sharedSeasons() };
      const answers: WorkResults['batch'] = [];
      for (const question of task.questions) answers.push(await batchAnswer(question, deps));
      return answers;
    }
    case 'hindcast': {
      const climates = createClimateCache(packedReader(task.weather));
      const { weather, season } = await prepareHindcast(task.question, {
        catalogue,
        climates,
        labels: labelsAsBook(task.labels),
      });
      return task.years.map((year) => hindcastYear(weather.climate, season, year, task.question.leadDays));
    }
  }
}
