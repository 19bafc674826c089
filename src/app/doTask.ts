import { hindcastYear } from '../analysis/hindcast.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import { batchAnswer } from './batchAnswer.ts';
import { createClimateCache } from './climateCache.ts';
import { prepareHindcast } from './hindcast.ts';
import { packedReader } from './packedWeather.ts';
import { regionOfStation, resolveRegion } from './regionOfStation.ts';
import type { WorkResults, WorkTask } from './workshop.ts';

/** Does one task, with nothing but what stands in it and the catalogue. */
export async function doTask(task: WorkTask, catalogue: Catalogue): Promise<WorkResults[WorkTask['kind']]> {
  switch (task.kind) {
    case 'region': {
      const region = resolveRegion(task.question, catalogue);
      return task.records.map((record) => regionOfStation(record, region));
    }
    case 'batch': {
      const climates = createClimateCache(packedReader(task.weather));
      const answers: WorkResults['batch'] = [];
      for (const question of task.questions)
        answers.push(await batchAnswer(question, { catalogue, climates }));
      return answers;
    }
    case 'hindcast': {
      const climates = createClimateCache(packedReader(task.weather));
      const { weather, season } = await prepareHindcast(task.question, { catalogue, climates });
      return task.years.map((year) => hindcastYear(weather.climate, season, year, task.question.leadDays));
    }
  }
}
