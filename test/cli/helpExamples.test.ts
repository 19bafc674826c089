import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { isoDateOf } from '../../src/calendar.ts';
import { COMMANDS } from '../../src/cli/commandList.ts';
import { inventedRecord } from '../../src/demo/inventedRecord.ts';
import { recordFiles, STATION, startRecordService } from '../built/documents/recordService.ts';
import { dlyLine, type MonthValues } from '../fixtures/weather/lines.ts';
import { tempFolder, tempFolderOfFile } from '../tempFolder.ts';
import { helpOf, namesBelow } from './helpOf.ts';
import { saidAgainst } from './parsedOnly.ts';
import { runDrywake } from './runDrywake.ts';
import { shellWords } from './shellWords.ts';

/** What an example is given besides: a server takes any free port, and is stopped as soon as it runs. */
const besideOf = (argv: readonly string[]): readonly string[] => (argv[0] === 'serve' ? ['--port', '0'] : []);

/** Files that examples take for granted. */
const FILES: Record<string, string> = {
  'fields.csv':
    'field,farm,station,treatment,applied_on,residual,interval,plan,crop,plant_on\n' +
    'Home quarter,,demo-invented,stubble,2026-08-14,flumioxazin,4 months,lentil,lentil,2027-05-10\n',
  'labels.csv':
    'name,label_version,entered_on,active_1,crop,interval\n' +
    'Shed one,invented,2026-07-01,flumioxazin,lentil,4 months\n',
};

/** The examples of a help text, each on one line. */
const examplesOf = (help: string): string[] =>
  [...help.replaceAll(/\\\n\s*/g, '').matchAll(/^ {2}(drywake .*)$/gm)].map(([, example]) => example);

async function allExamples(): Promise<string[]> {
  const folder = tempFolder();
  const helps = [await helpOf([], folder)];
  for (const { name } of COMMANDS) {
    helps.push(await helpOf([name], folder));
    for (const below of await namesBelow([name], folder)) helps.push(await helpOf([name, below], folder));
  }
  return [...new Set(helps.flatMap(examplesOf))];
}

/** The demo's weather in the fixed-width layout, under the id that examples use. */
function fixedWidth(): string {
  const record = inventedRecord();
  const months = new Map<string, MonthValues>();
  const elements = {
    PRCP: record.rainTenthsMm,
    TMAX: record.maxTempTenthsC,
    TMIN: record.minTempTenthsC,
  };
  for (const [element, values] of Object.entries(elements)) {
    values.forEach((value, index) => {
      const [year, month, day] = isoDateOf(record.firstDay + index).split('-');
      if (year < '1981') return;
      const key = `${year} ${month} ${element}`;
      const before = months.get(key) ?? {};
      before[Number(day)] = value;
      months.set(key, before);
    });
  }
  return [...months]
    .map(([key, values]) => {
      const [year, month, element] = key.split(' ');
      return `${dlyLine(STATION, Number(year), Number(month), element, values)}\n`;
    })
    .join('');
}

describe('the examples of the help', () => {
  const folder = tempFolderOfFile();
  const before = process.cwd();
  let service: Awaited<ReturnType<typeof startRecordService>>;
  beforeAll(async () => {
    // Records are asked for on this computer.
    service = await startRecordService(recordFiles(1981));
    vi.stubEnv('DRYWAKE_RECORDS', service.address);
    process.chdir(folder);
    mkdirSync('records');
    writeFileSync(`records/${STATION}.dly.gz`, gzipSync(fixedWidth()));
  });
  afterAll(() => {
    process.chdir(before);
    vi.unstubAllEnvs();
    service.close();
  });

  it('are all read by the parser', async () => {
    const examples = await allExamples();
    expect(examples.length).toBeGreaterThan(35);
    for (const example of examples) {
      expect(await saidAgainst(shellWords(example).slice(1), tempFolder()), example).toBeNull();
    }
  });

  it('run, one after the other, in a folder with the files that they name', async () => {
    const store = `${folder}/store`;
    const run = (argv: readonly string[]) => runDrywake(argv, store);
    const examples = await allExamples();
    // A field and a label entry are kept and weather is in the store before anything asks for them.
    const isFirst = (one: string) => / (?:fields|labels|weather) import /.test(one);
    for (const example of [...examples.filter(isFirst), ...examples.filter((one) => !isFirst(one))]) {
      const argv = shellWords(example).slice(1);
      for (const [name, text] of Object.entries(FILES)) {
        if (argv.includes('--out')) rmSync(name, { force: true });
        else writeFileSync(name, text);
      }
      if (argv[0] === 'batch') writeFileSync('fields.csv', (await run(['batch', '--template'])).out);
      const { code, out, err } = await run([...argv, ...besideOf(argv)]);
      expect([example, code, code === 0 ? '' : err]).toEqual([example, 0, '']);
      expect(out + err, example).not.toBe('');
      // “undo” takes the first version of the field back, which there is none before; a change comes first.
      if (argv[0] === 'fields' && argv[1] === 'import') {
        writeFileSync('fields.csv', FILES['fields.csv'].replace('4 months', '5 months'));
        expect((await run(argv)).code).toBe(0);
      }
    }
  });
});
