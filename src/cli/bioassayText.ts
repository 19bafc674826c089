import type { BioassayGuide, GuideLine } from '../schema/bioassay.ts';
import { wrap } from './answerText.ts';

/** The printed guide to a field bioassay. */
export function bioassayText(guide: BioassayGuide): string {
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => wrap(line, '- ', '  '))];
  const words = (lines: readonly GuideLine[]) => lines.map(({ text, mark }) => text + memory(mark));
  return [
    guide.title,
    wrap(guide.worth),
    ...section('When', words(guide.when)),
    ...section('Where to take soil', words(guide.where)),
    ...section('How deep', words(guide.depth)),
    ...section('Sow and grow', words(guide.steps)),
    ...section(
      'Species',
      guide.species.map(({ crop, reason, mark }) => `${crop}: ${reason}${memory(mark)}`),
    ),
    ...section('Reading it', words(guide.reading)),
    ...section('What it does not tell', words(guide.limits)),
    ...section('Sources', guide.sources),
    '',
  ].join('\n');
}

const memory = (mark: string | null): string => (mark === 'from memory' ? ' (from memory)' : '');
