import type { Binding } from '../../gestures/bindings.js';
import type { Chord } from '../../language/model.js';
import { chordText, gestureText } from '../text.js';
import type { Sighting } from './sighting.js';

/** What the player does, as the scheme writes it: `button tap under 0.5 s`. */
export function doingText(binding: Binding): string {
  return `${controlOf(binding)} ${gestureText(binding.gesture)}`;
}

/** A binding’s control as its row writes it: `stick left/right`, `stick up + button`. */
export function controlOf({ origin, alternative, parts }: Binding): string {
  const chord = alternativesOf(origin)[alternative];
  return chord === undefined ? parts.map(({ id }) => id).join(' + ') : chordText(chord);
}

function alternativesOf(origin: Binding['origin']): readonly Chord[] {
  if (origin.kind === 'row') return origin.row.alternatives;
  const { instead } = origin.fallback;
  return instead.kind === 'binding' ? instead.alternatives : [];
}

/** Everything that the messages of the conflict rules ask for; what a rule has no use for is empty. */
export function messageParameters({ bindings, mode, standard, extra }: Sighting) {
  const [x, y] = bindings;
  return {
    x: x.actionName,
    xDoing: doingText(x),
    y: y?.actionName ?? '',
    yDoing: y === undefined ? '' : doingText(y),
    mode: mode.name,
    leaves: y === undefined ? '' : leavesText(x, y),
    control: controlOf(x),
    standard: standard.name,
    reason: '',
    setting: '',
    from: '',
    reads: '',
    state: '',
    ...extra,
  };
}

/** Where x has a `go to`, what comes of y. */
function leavesText(x: Binding, y: Binding): string {
  const goTo = x.effects.find(({ kind }) => kind === 'go to');
  if (goTo?.kind !== 'go to') return '';
  const what = goTo.mode === x.mode ? `begins ${x.mode.name} anew` : `leaves ${x.mode.name}`;
  return `; as “${x.actionName}” ${what}, “${y.actionName}” can then never be done`;
}
