import type { AnswerDeps } from '../app/answerField.ts';
import type { WeatherReader } from '../app/weatherReader.ts';
import type { Example } from '../schema/example.ts';

/** What the routes need; adapters come from outside. */
export interface HttpDeps extends AnswerDeps {
  readonly weather: WeatherReader;
  /** The worked question of the first screen. */
  readonly example: Example;
  /** Folder of the built page; null where only the interface is served. */
  readonly pageFolder: string | null;
  /** One line for the server's own log. */
  log(line: string): void;
}
