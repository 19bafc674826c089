import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBuilt } from '../builtProgram.ts';
import { isCommand, isProjectBlock } from './commands.ts';
import { commandsOf, documents, type Fence, fencesOf, isShown, namedFiles } from './fences.ts';
import { startRecordService } from './recordService.ts';
import { makeWorkplace, runProgram } from './workplace.ts';

const PROJECT = new URL('../../../', import.meta.url);

/** Blocks that are run: commands, programs against the server, programs with the library. Others only show. */
const RUN = ['sh', 'js', 'ts'];
const SHOW = ['text', 'csv', 'json'];

const all = documents().map((document) => ({ ...document, fences: fencesOf(document) }));

const files = namedFiles();

let service: Awaited<ReturnType<typeof startRecordService>>;
beforeAll(async () => {
  service = await startRecordService();
});
afterAll(() => service.close());

it('documents say of every block what it is', () => {
  const kinds = all.flatMap(({ path, fences }) => fences.map(({ kind }) => `${path}: ${kind}`));
  expect(kinds.filter((one) => ![...RUN, ...SHOW].some((kind) => one.endsWith(`: ${kind}`)))).toEqual([]);
});

it('no command stands in a block that only shows', () => {
  const lines = all.flatMap(({ path, fences }) =>
    fences
      .filter(({ kind }) => SHOW.includes(kind))
      .flatMap(({ text }) => text.split('\n').map((code) => ({ path, code: code.replace(/^\$ /, '') }))),
  );
  expect(lines.filter(isCommand)).toEqual([]);
});

/** Blocks about the project itself are run in a copy of it, by `projectCommands.test.ts`. */
const isCommands = ({ kind, text }: Fence): boolean => kind === 'sh' && !isProjectBlock(text);

describe('commands in documents run, and print what is shown (UPDATE_DOCUMENTS=1 rewrites it)', () => {
  it.concurrent.each(all.filter(({ fences }) => fences.some(isCommands)))(
    '$path',
    async ({ path, text, fences }) => {
      const place = makeWorkplace(files, service.address);
      let mended = text;
      for (const { command, output } of fences
        .filter(isCommands)
        .flatMap((fence) => commandsOf(fence.text))) {
        const { code, out, err } = await place.run(command);
        expect([code, code === 0 ? '' : `${command}\n${err}`]).toEqual([0, '']);
        if (output === null || isShown(output, out)) continue;
        if (process.env.UPDATE_DOCUMENTS) mended = mended.replace(output, () => out.trimEnd());
        else expect(out.trimEnd(), command).toBe(output);
      }
      if (mended !== text) writeFileSync(new URL(path, PROJECT), mended);
      place.leave();
    },
  );
});

/** Where documents say that the server is. */
const SHOWN_ADDRESS = 'http://127.0.0.1:4717';

/** A program of a document with the text block right under it, which shows what it prints. */
const programsOf = (fences: readonly Fence[], kind: string) =>
  fences.flatMap((fence, index) => {
    const next = fences[index + 1];
    return fence.kind === kind
      ? [{ program: fence.text, shown: next?.kind === 'text' ? next.text : null }]
      : [];
  });

/** Compares each program's print with what is shown, or rewrites the document. */
async function judge(
  { path, text, fences }: (typeof all)[number],
  kind: string,
  run: (program: string, index: number) => ReturnType<typeof runProgram>,
): Promise<void> {
  let mended = text;
  for (const [index, { program, shown }] of programsOf(fences, kind).entries()) {
    const { code, out, err } = await run(program, index);
    expect([code, code === 0 ? '' : `${program}\n${err}`]).toEqual([0, '']);
    expect(shown, 'a text block shows what the program prints').not.toBeNull();
    if (process.env.UPDATE_DOCUMENTS) {
      mended = mended.replace(
        `${program}\n\`\`\`\n\n\`\`\`text\n${shown === '' ? '' : `${shown}\n`}`,
        () => `${program}\n\`\`\`\n\n\`\`\`text\n${out.trimEnd()}\n`,
      );
    } else expect(out.trimEnd(), program).toBe(shown);
  }
  if (mended !== text) writeFileSync(new URL(path, PROJECT), mended);
}

describe('programs in documents run against the server, and print what is shown', () => {
  it.each(all.filter(({ fences }) => fences.some(({ kind }) => kind === 'js')))('$path', async (document) => {
    const { folder, leave } = makeWorkplace(files, service.address);
    const server = await startBuilt(`${folder}/.drywake`);
    try {
      await judge(document, 'js', (program, index) => {
        const file = `${folder}/program-${index}.mjs`;
        writeFileSync(file, program.replaceAll(SHOWN_ADDRESS, server.address.replace(/\/$/, '')));
        return runProgram([file], folder);
      });
    } finally {
      await server.stop();
      leave();
    }
  });
});

describe('programs in documents fit the library’s types, run, and print what is shown', () => {
  const folder = fileURLToPath(new URL('test-output/programs/', PROJECT));
  const documents = all.filter(({ fences }) => fences.some(({ kind }) => kind === 'ts'));
  const fileOf = (path: string, index: number) => `${folder}${path.replaceAll(/[/.]/g, '-')}-${index}.ts`;
  beforeAll(() => {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    const base = { extends: '../../.configs/tsconfig.base.json', include: ['*.ts'] };
    const compilerOptions = { noEmit: true, composite: false, emitDeclarationOnly: false };
    writeFileSync(`${folder}tsconfig.json`, JSON.stringify({ ...base, compilerOptions }));
    for (const { path, fences } of documents)
      for (const [index, { program }] of programsOf(fences, 'ts').entries())
        writeFileSync(fileOf(path, index), `${program}\nexport {};\n`);
  });

  it('types', () => {
    const tsc = fileURLToPath(new URL('node_modules/typescript/bin/tsc', PROJECT));
    const { stdout, status } = spawnSync(process.execPath, [tsc, '-p', folder], { encoding: 'utf8' });
    expect([status, stdout]).toEqual([0, '']);
  });

  it.each(documents)('$path', (document) =>
    judge(document, 'ts', (_, index) =>
      runProgram(['--import', 'tsx', fileOf(document.path, index)], folder),
    ),
  );
});
