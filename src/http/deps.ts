import type { AnswerDeps } from '../app/answerField.ts';
import type { FieldsDesk } from '../app/fieldsDesk.ts';
import type { WeatherInbox } from '../app/weatherInbox.ts';
import type { WeatherReader } from '../app/weatherReader.ts';
import type { Workshop } from '../app/workshop.ts';
import type { Example } from '../schema/example.ts';
import type { County } from '../schema/place.ts';
import type { ServerGuard } from './guard/serverGuard.ts';

/** What the routes need; adapters come from outside. */
export interface HttpDeps extends AnswerDeps {
  readonly weather: WeatherReader;
  /** Takes weather files that the page sends. */
  readonly inbox: WeatherInbox;
  /** The user's fields and label entries. */
  readonly desk: FieldsDesk;
  /** All US counties with the middle of their areas. */
  counties(): Promise<readonly County[]>;
  /** Worker threads for regions and hindcasts; all is worked out in the server's own where absent. */
  readonly workshop?: Workshop;
  /** The moment, ISO 8601 in UTC: for what says when it was made. */
  clock(): string;
  /** Tells the US state that a place lies in. */
  stateOf?(): Promise<(latitudeDeg: number, longitudeDeg: number) => string | null>;
  /** The worked question of the first screen. */
  readonly example: Example;
  /** Folder of the built page; null where only the interface is served. */
  readonly pageFolder: string | null;
  /** One line for the server's own log: JSON, without anything of what was asked. */
  log(line: string): void;
  /** Whether every request is logged, not only what nobody foresaw. */
  readonly logRequests?: boolean;
  /** Who may ask, and how much; a server for this computer alone where absent. */
  readonly guard?: ServerGuard;
}
