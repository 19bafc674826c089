import { writeFileSync } from 'node:fs';
import { LICENCES, licencesText } from './licences.ts';

writeFileSync(LICENCES, licencesText());
