import { mkdirSync, writeFileSync } from 'node:fs';
import { dryYear } from './dry-year.ts';

/** Runs every notebook and writes its page. */
const folder = new URL('../dist/notebooks/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, notebook] of Object.entries({ 'dry-year': dryYear })) {
  const { markdown } = await notebook();
  writeFileSync(new URL(`${name}.md`, folder), markdown);
  console.log(`dist/notebooks/${name}.md`);
}
