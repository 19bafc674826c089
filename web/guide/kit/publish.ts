import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { guidePage } from './guidePage.ts';

/** Writes the guide's pages, its pictures and the page of the catalogue's data among the files that the server shows. */
const project = new URL('../../../', import.meta.url);
const guide = new URL('web/guide/', project);
const folder = new URL('dist/web/guide/', project);
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const publish = async (document: URL, name: string) =>
  writeFileSync(
    new URL(name, folder),
    await guidePage(readFileSync(document, 'utf8'), name === 'index.html'),
  );

for (const name of readdirSync(guide).filter((one) => one.endsWith('.md'))) {
  await publish(new URL(name, guide), name === 'README.md' ? 'index.html' : name.replace('.md', '.html'));
}
await publish(new URL('data/README.md', project), 'data.html');
const pictures = new URL('web/picture/', project);
for (const name of readdirSync(pictures)) copyFileSync(new URL(name, pictures), new URL(name, folder));
