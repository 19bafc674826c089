import type { BioassayGuide } from '../api/contract.ts';

type Line = BioassayGuide['when'][number];

const SECTIONS = [
  { key: 'when', title: 'When' },
  { key: 'where', title: 'Where to take soil' },
  { key: 'depth', title: 'How deep' },
  { key: 'steps', title: 'Sowing and growing' },
  { key: 'species', title: 'What to sow' },
  { key: 'reading', title: 'Reading it' },
  { key: 'limits', title: 'What it cannot tell' },
] as const;

/** The parts of the guide; a number behind a statement names its source, “from memory” says that it has none. */
export function GuideSections({ guide }: { guide: BioassayGuide }) {
  return (
    <div class="guide-sections">
      {SECTIONS.map(({ key, title }) => {
        const lines: readonly Line[] =
          key === 'species'
            ? guide.species.map(({ crop, reason, mark, sources }) => ({
                text: `${crop}: ${reason}`,
                mark: mark ?? 'seen',
                sources,
              }))
            : guide[key];
        if (lines.length === 0) return null;
        return (
          <section key={key}>
            <h2>{title}</h2>
            <ul>
              {lines.map((line) => (
                <li key={line.text}>
                  {line.text} <Cited line={line} all={guide.sources} />
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </div>
  );
}

function Cited({ line: { mark, sources }, all }: { line: Line; all: readonly string[] }) {
  const numbers = sources.map((source) => all.indexOf(source) + 1).filter((number) => number > 0);
  const words = [numbers.join(', '), mark === 'from memory' ? 'from memory' : ''].filter(Boolean);
  return words.length === 0 ? null : <small>[{words.join('; ')}]</small>;
}
