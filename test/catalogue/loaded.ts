import { fileURLToPath } from 'node:url';
import { loadCatalogue, readDataFolder } from '../../src/index.ts';

export const dataFolder = new URL('../../data/', import.meta.url);
export const dataPath = fileURLToPath(dataFolder);
export const texts = readDataFolder(dataFolder);
export const catalogue = loadCatalogue(texts);
