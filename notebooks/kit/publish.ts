import { copyFileSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { notebooks } from '../all.ts';
import { indexPage, notebookPage } from './page.ts';

/** Runs every notebook and writes its page among the files that the server shows. */
const folder = new URL('../../dist/web/notebooks/', import.meta.url);
const packages = new URL('../../node_modules/@fontsource-variable/', import.meta.url);
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
for (const notebook of notebooks) {
  writeFileSync(new URL(`${notebook.name}.html`, folder), await notebookPage(notebook));
}
writeFileSync(new URL('index.html', folder), await indexPage(notebooks));
copyFileSync(new URL('notebook.css', import.meta.url), new URL('notebook.css', folder));
copyFileSync(
  new URL('petrona/files/petrona-latin-wght-normal.woff2', packages),
  new URL('petrona.woff2', folder),
);
copyFileSync(
  new URL('atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2', packages),
  new URL('atkinson.woff2', folder),
);
