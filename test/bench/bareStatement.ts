/** Same bound on memory as the store sets itself, so that both sides spill alike. */
export const MEMORY_LIMIT = '800MB';

/**
 * What the database alone needs for the same end: read, filter, pivot, sort, write. It trusts every line and counts
 * nothing.
 */
export const bareStatement = (path: string): string => `CREATE TABLE daily AS
SELECT column0 AS id, strptime(column1, '%Y%m%d')::DATE AS day,
  max(column3) FILTER (column2 = 'PRCP') AS rain, max(column3) FILTER (column2 = 'TMAX') AS max_temp,
  max(column3) FILTER (column2 = 'TMIN') AS min_temp, max(column3) FILTER (column2 = 'MDPR') AS multi_day_rain,
  max(column3) FILTER (column2 = 'DAPR') AS multi_day_count
FROM read_csv('${path.replaceAll("'", "''")}', header = false, columns = {'column0': 'VARCHAR', 'column1': 'VARCHAR',
  'column2': 'VARCHAR', 'column3': 'INTEGER', 'column4': 'VARCHAR', 'column5': 'VARCHAR', 'column6': 'VARCHAR',
  'column7': 'VARCHAR'})
WHERE column5 IS NULL AND column2 IN ('PRCP', 'TMAX', 'TMIN', 'MDPR', 'DAPR')
GROUP BY id, day ORDER BY id, day`;
