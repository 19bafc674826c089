import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';

const INDEX_NAME = 'index.json';

const versionSchema = z.object({
  /** Address that it came from. */
  url: z.string(),
  etag: z.string().nullable(),
  lastModified: z.string().nullable(),
});
const indexSchema = z.object({
  /** Whole files by name, with their size. [B] */
  files: z.record(z.string(), versionSchema.extend({ bytes: z.int() })),
  /** Files that broke off, by name. */
  parts: z.record(z.string(), versionSchema),
});

/** Which version of a file the service sent, in its own words. */
export type FileVersion = z.infer<typeof versionSchema>;
type Index = z.infer<typeof indexSchema>;

/** The fetched files and what is known of them. A file appears under its name only when it is whole. */
export class RecordsFolder {
  private index: Promise<Index> | undefined;
  private writing: Promise<unknown> = Promise.resolve();

  constructor(readonly folder: string) {}

  pathOf(name: string): string {
    return join(this.folder, name);
  }

  partPathOf(name: string): string {
    return join(this.folder, `${name}.part`);
  }

  /** The version of a whole file from that address; null where it is not here, or is not what was put here. */
  async held(name: string, url: string): Promise<FileVersion | null> {
    const entry = (await this.entries()).files[name];
    const is = entry?.url === url && (await sizeOf(this.pathOf(name))) === entry.bytes;
    return is ? entry : null;
  }

  /** The version and size of a file from that address that broke off; null where there is none to go on with. */
  async part(name: string, url: string): Promise<(FileVersion & { bytes: number }) | null> {
    const entry = (await this.entries()).parts[name];
    const bytes = entry?.url === url ? await sizeOf(this.partPathOf(name)) : 0;
    return bytes > 0 ? { ...entry, bytes } : null;
  }

  /** Notes whose beginning the part file is going to hold. */
  async beginPart(name: string, version: FileVersion): Promise<void> {
    await this.change((index) => {
      index.parts[name] = version;
    });
  }

  /** Throws a part away. */
  async dropPart(name: string): Promise<void> {
    await rm(this.partPathOf(name), { force: true });
    if (name in (await this.entries()).parts) {
      await this.change((index) => {
        delete index.parts[name];
      });
    }
  }

  /** Makes a part that is whole the file. */
  async keep(name: string, version: FileVersion): Promise<void> {
    const bytes = await sizeOf(this.partPathOf(name));
    await rename(this.partPathOf(name), this.pathOf(name));
    await this.change((index) => {
      delete index.parts[name];
      index.files[name] = { ...version, bytes };
    });
  }

  /** Makes the folder where it is not there yet. */
  async make(): Promise<void> {
    await mkdir(this.folder, { recursive: true });
  }

  private entries(): Promise<Index> {
    this.index ??= readIndex(this.pathOf(INDEX_NAME));
    return this.index;
  }

  /** Changes the index and writes it anew, one change after the other. */
  private change(edit: (index: Index) => void): Promise<void> {
    const task = this.writing.then(async () => {
      const index = await this.entries();
      edit(index);
      const fresh = this.pathOf(`${INDEX_NAME}.new`);
      await writeFile(fresh, `${JSON.stringify(index, null, 1)}\n`);
      await rename(fresh, this.pathOf(INDEX_NAME));
    });
    this.writing = task.catch(() => undefined);
    return task;
  }
}

/** The index; empty where there is none or it cannot be read, as everything can be fetched again. */
async function readIndex(path: string): Promise<Index> {
  try {
    return indexSchema.parse(JSON.parse(await readFile(path, 'utf8')));
  } catch {
    return { files: {}, parts: {} };
  }
}

async function sizeOf(path: string): Promise<number> {
  try {
    return (await stat(path)).size;
  } catch {
    return 0;
  }
}
