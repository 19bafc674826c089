import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { batch } from '../../src/app/batch.ts';
import { batchTable } from '../../src/app/batchTable.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { fieldListTemplate, readFieldList } from '../../src/app/fieldList.ts';
import { csvOf } from '../../src/app/flatTable.ts';
import { keepClimates } from '../../src/app/keptClimates.ts';
import { labelsAsBook, readLabelEntry } from '../../src/app/labelBook.ts';
import { modelOf } from '../../src/app/modelOf.ts';
import { packWeather } from '../../src/app/packedWeather.ts';
import { guardCell } from '../../src/app/tables/cells.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { InvalidInputError } from '../../src/errors.ts';
import { batchSchema } from '../../src/schema/batch.ts';
import { type QuestionInput, questionSchema } from '../../src/schema/question.ts';
import { catalogue } from '../catalogue/loaded.ts';

const weather = createDemoReader();
const deps = { version: '1', catalogue, weather };
const HEAD = 'field,acres,station,residual,crop,applied_on,plant_on,as_of,soil_class,note';
const listOf = (...rows: string[]) => readFieldList([HEAD, ...rows].join('\n'), 'fields.csv');
const north = 'North,160,demo-invented,flumioxazin,lentil,2026-08-14,2027-05-10,2026-09-30,clay,first';
const south = 'South,20,demo-invented,flumioxazin,lentil,2026-08-14,2027-04-10,,sand,';

describe('a list of fields', () => {
  it('gives each field the figures of the whole answer', async () => {
    const mix = 'Mix,5,demo-invented,flumioxazin,lentil + pea,2026-08-14,2027-05-10,,,';
    const { rows } = await batch(listOf(north, south, mix), {}, deps);
    expect(rows.length).toBe(3);
    for (const { given, answer } of rows) {
      const question: QuestionInput = {
        station: given.station,
        residual: given.residual,
        crop: given.crop,
        appliedOn: given.applied_on,
        plantOn: given.plant_on,
        ...(given.as_of && { asOf: given.as_of }),
        ...(given.soil_class && { soilClass: given.soil_class as 'clay' }),
      };
      const whole = await answerField(question, {
        catalogue,
        climates: createClimateCache(weather),
        version: '1',
      });
      expect(answer?.oddsAtPlanting).toBeCloseTo(whole.oddsAtPlanting ?? -1, 12);
      expect(answer?.oddsLow).toBeCloseTo(whole.oddsRange?.low ?? -1, 12);
      expect(answer?.labelDate).toBe(whole.labelDate);
      expect(answer?.clearDate).toBe(whole.clearDate);
    }
  });

  it('tells of a column that is spelled like one of its own, since its cells are not read', async () => {
    const head = 'field,station,residual,crop,applied_on,plant_on,soil_clas,note\n';
    const text = `${head}North,demo-invented,flumioxazin,lentil,2026-08-14,2027-04-10,sand,clay here\n`;
    const { cautions, rows } = await batch(readFieldList(text, 'list.csv'), {}, deps);
    expect(cautions[0]).toBe(
      'The column "soil_clas" means nothing here, so it was not read. Did you mean soil_class?',
    );
    expect(cautions.join()).not.toContain('"note"');
    expect(rows[0].answer).not.toBeNull();
    const lacking = readFieldList(text.replace('plant_on', 'plant on date'), 'list.csv');
    await expect(batch(lacking, {}, deps)).rejects.toMatchObject({ code: 'BATCH_COLUMNS' });
    const near = readFieldList(text.replace('plant_on', 'plantd_on'), 'list.csv');
    await expect(batch(near, {}, deps)).rejects.toMatchObject({
      hint: expect.stringContaining('Did you mean plant_on?'),
    });
  });

  it('is ranked by odds times area, then by odds, refused rows last', async () => {
    const result = await batch(
      listOf(
        south,
        north,
        'No area,,demo-invented,flumioxazin,lentil,2026-08-14,2027-04-10,,,',
        'Nowhere,900,nowhere,flumioxazin,lentil,2026-08-14,2027-04-10,,,',
        'Misspelt,900,demo-invented,flumi,lentil,2026-08-14,2027-04-10,,,',
        'Bad date,900,demo-invented,flumioxazin,lentil,2026-08-34,2027-04-10,,,',
        'Grass,900,demo-invented,glyphosate,lentil,2026-08-14,2027-04-10,,,',
      ),
      {},
      deps,
    );
    const { rows, answered, refused, unknownColumns } = batchSchema.parse(result);
    expect(rows.map(({ given }) => given.field)).toEqual([
      ...['North', 'South', 'No area', 'Grass', 'Nowhere', 'Misspelt', 'Bad date'],
    ]);
    expect(rows.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(rows.map(({ line }) => line)).toEqual([3, 2, 4, 8, 5, 6, 7]);
    expect([answered, refused]).toEqual([4, 3]);
    expect(unknownColumns).toEqual(['note']);
    expect(rows.slice(4).map(({ problem }) => problem?.code)).toEqual([
      ...['STATION_UNKNOWN', 'RESIDUAL_UNKNOWN', 'QUESTION_UNREADABLE'],
    ]);
    const [{ hectaresAtRisk, answer }] = rows;
    expect(hectaresAtRisk).toBeCloseTo((answer?.oddsAtPlanting ?? 0) * 160 * 0.40468564224, 9);
  });

  it('takes what a column lacks from the values for all rows, and a row’s own first', async () => {
    const list = readFieldList(
      'station;crop;applied_on;plant_on;residual\ndemo-invented;lentil;2026-08-14;2027-05-10;\n',
      'fields.csv',
    );
    const { rows } = await batch(list, { residual: 'flumioxazin', soilClass: 'sand' }, deps);
    expect(rows[0].problem).toBeNull();
    const whole = await answerField(
      {
        ...{ station: 'demo-invented', crop: 'lentil', appliedOn: '2026-08-14', plantOn: '2027-05-10' },
        ...{ residual: 'flumioxazin', soilClass: 'sand' },
      },
      { catalogue, climates: createClimateCache(weather), version: '1' },
    );
    expect(rows[0].answer?.oddsAtPlanting).toBeCloseTo(whole.oddsAtPlanting ?? -1, 12);
  });

  it('takes own label entries, by a column of their own, in place of the residual', async () => {
    const entry = (id: string, names: string[], interval: string) =>
      readLabelEntry({
        ...{ id, name: `My ${id}`, actives: names.map((name) => ({ name })) },
        labelVersion: 'invented',
        enteredOn: '2026-05-01',
        intervals: [{ crop: 'lentil', interval }],
      });
    const labels = labelsAsBook([
      { version: 1, entry: entry('one', ['imazethapyr'], '10 months') },
      { version: 4, entry: entry('two', ['imazethapyr', 'imazamox'], '9 months') },
    ]);
    const head = 'field,acres,station,label_entry,crop,applied_on,plant_on\n';
    const row = (id: string) => `${id},9,demo-invented,${id},lentil,2026-08-14,2027-05-10\n`;
    const list = readFieldList(`${head}${row('one')}${row('two')}${row('three')}`, 'f.csv');
    const { rows } = await batch(list, {}, { ...deps, labels });
    const climates = createClimateCache(weather);
    for (const id of ['one', 'two']) {
      const whole = await answerField(
        {
          ...{ station: 'demo-invented', crop: 'lentil', labelEntry: id },
          ...{ appliedOn: '2026-08-14', plantOn: '2027-05-10' },
        },
        { catalogue, climates, labels, version: '1' },
      );
      const { answer } = rows.find(({ given }) => given.field === id) ?? {};
      expect(answer?.oddsAtPlanting).toBeCloseTo(whole.oddsAtPlanting ?? -1, 12);
      expect([answer?.labelDate, answer?.intervalConfirmed]).toEqual([whole.labelDate, true]);
    }
    expect(rows[2].problem).toMatchObject({ code: 'LABEL_UNKNOWN', hint: 'There is one, two.' });
    await expect(batch(list, {}, deps)).resolves.toMatchObject({ answered: 0, refused: 3 });
  });

  it('keeps climates within its bytes, the latest always', async () => {
    const packed = await packWeather(weather, questionSchema.parse(demoQuestion));
    const kept = keepClimates(0);
    const first = kept.of('a', packed);
    expect(kept.of('a', packed)).toBe(first);
    kept.of('b', packed);
    expect(kept.of('a', packed)).not.toBe(first);
  });

  it('refuses a file without rows, without needed columns, or with a column twice', async () => {
    await expect(batch(readFieldList(HEAD, 'f.csv'), {}, deps)).rejects.toThrow('holds no row');
    const short = readFieldList('station,crop\na,b\n', 'f.csv');
    await expect(batch(short, {}, deps)).rejects.toThrow('lacks the columns residual, applied_on, plant_on');
    expect(() => readFieldList('crop,Crop\na,b\n', 'f.csv')).toThrow(InvalidInputError);
    expect(() => readFieldList('a,b\n"1,2\n', 'f.csv')).toThrow('cannot be read as CSV');
  });

  it('has a template that answers as it stands', async () => {
    const { answered } = await batch(readFieldList(fieldListTemplate(), 'template.csv'), {}, deps);
    expect(answered).toBe(1);
  });

  it('tells how far it is and stops when asked', async () => {
    const told: string[] = [];
    await batch(listOf(north, south), {}, deps, { progress: (done, of) => void told.push(`${done}/${of}`) });
    expect(told).toEqual(['2/2']);
    await expect(batch(listOf(north), {}, deps, { signal: AbortSignal.abort() })).rejects.toThrow('stopped');
  });
});

describe('a list as CSV', () => {
  it('keeps its columns, adds the answers and defuses formulas', async () => {
    const evil =
      '"=HYPERLINK(""x"")",160,demo-invented,flumioxazin,lentil,2026-08-14,2027-05-10,,loam,"@a,-b"';
    const list = listOf(evil);
    const { rows, model } = await batch(list, {}, deps);
    const table = batchTable(list.columns, model, { asOf: '2026-09-30' });
    const [head, row] = csvOf(table, rows).split('\n');
    expect(head.startsWith(`${HEAD},rank,odds_at_planting,`)).toBe(true);
    expect(row.startsWith(`"'=HYPERLINK(""x"")",160,demo-invented,`)).toBe(true);
    expect(row).toContain(`"'@a,-b"`);
    expect(head.endsWith(',problem,asked,model')).toBe(true);
    expect(row.endsWith(',"{""asOf"":""2026-09-30""}",drywake residual persistence 1')).toBe(true);
  });

  it('gives an answer’s column another name where the file has it already', () => {
    expect(batchTable(['rank'], modelOf('1')).map(({ name }) => name)).toContain('drywake_rank');
  });

  it('leaves numbers and plain words alone', () => {
    expect(['-12.5', '+3', 'a=b', '', '7'].map(guardCell)).toEqual(['-12.5', '+3', 'a=b', '', '7']);
    expect(['=1+1', '+1+1', '-1-1', '@x', '\tx', '\rx', '-'].map(guardCell)).toEqual([
      ...["'=1+1", "'+1+1", "'-1-1", "'@x", "'\tx", "'\rx", "'-"],
    ]);
  });
});
