import type { Report } from '../findings/report.js';
import type { ControlWords } from './control-words.js';
import type { Action, Mode, NamedTime, SeatsRow } from './model.js';
import type { Names } from './names.js';
import type { Settings } from './read-settings.js';

/** Every name that a row of bindings can use. */
export interface Scope {
  readonly report: Report;
  readonly seats: Names<SeatsRow>;
  readonly settings: Settings;
  readonly actions: Names<Action>;
  readonly modes: Names<Mode>;
  readonly times: Names<NamedTime>;
  readonly controls: ControlWords;
}
