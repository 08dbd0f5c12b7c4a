import type { Place } from '../../src/findings/place.js';
import type { BindingRow, ControlName, Effect, Gesture, Scheme, Who } from '../../src/language/model.js';

/** A value of a scheme: its place, and words that must stand there (compared without case and spaces). */
export interface PlacedWords {
  readonly what: string;
  readonly at: Place;
  readonly words: string;
}

/** Every value of a scheme that has a place. */
export function placedWords(scheme: Scheme): readonly PlacedWords[] {
  const named = (
    what: string,
    things: readonly { readonly name: string; readonly at: Place }[],
  ): PlacedWords[] => things.map(({ name, at }) => ({ what, at, words: name }));
  return [
    { what: 'title', at: scheme.title.at, words: scheme.title.value },
    { what: 'short name', at: scheme.game.shortName.at, words: scheme.game.shortName.value },
    ...saidOf('language', scheme.game.language, scheme.game.language.value, scheme.game.at),
    ...saidOf('latch', scheme.game.latch, scheme.game.latch.value, scheme.game.at),
    ...saidOf('reads', scheme.game.readEvery, everyWords(scheme.game.readEvery.value), scheme.game.at),
    ...named('seats row', scheme.seats),
    ...named('setting', scheme.settings),
    ...named('action', scheme.actions),
    ...named('mode', scheme.modes),
    ...named('switch words', scheme.switchWords),
    ...named('variation', scheme.variations),
    ...named('time', scheme.times),
    ...scheme.settings.flatMap(({ setBy }) =>
      setBy.kind === 'game' ? [] : [{ what: 'set by', at: setBy.at, words: `${setBy.name}:` }],
    ),
    ...scheme.actions.flatMap(({ short }) =>
      short === null ? [] : [{ what: 'short', at: short.at, words: short.value }],
    ),
    ...scheme.times.map(({ time }) => ({ what: 'time', at: time.at, words: time.text })),
    ...scheme.controllers.flatMap(({ controller, at, controlsAt }) => [
      { what: 'controller', at, words: controller.name },
      ...[...controlsAt].map(([words, place]) => ({ what: 'own control', at: place, words })),
    ]),
    ...scheme.fallbacks.flatMap(placedOfFallback),
    ...scheme.accepted.map(({ at, rule }) => ({ what: 'accepted', at, words: rule })),
    ...scheme.overlays.map(({ at, mm }) => ({ what: 'overlay', at, words: `${mm} mm` })),
    ...scheme.chapters.map(({ at, title }) => ({ what: 'chapter', at, words: title })),
    ...scheme.modes.flatMap(({ rows }) => rows.flatMap(placedOfRow)),
  ];
}

/** A fact that may be left out: then it stands where the game is named. */
function saidOf(
  what: string,
  { at }: { readonly at: Place },
  words: string,
  game: Place,
): readonly PlacedWords[] {
  return at === game ? [] : [{ what, at, words }];
}

const everyWords = (frames: number): string => (frames === 1 ? 'every frame' : `every ${frames} frames`);

function placedOfFallback({ at, subject, instead }: Scheme['fallbacks'][number]): readonly PlacedWords[] {
  const name = subject.kind === 'setting' ? subject.setting.name : subject.action.name;
  const first = { what: 'fallback', at, words: name };
  if (instead.kind === 'stays') return [first];
  return [
    first,
    { what: 'instead', at: instead.at, words: `${instead.mode.name}:` },
    { what: 'gesture of a fallback', at: instead.gesture.at, words: gestureWords(instead.gesture.value) },
    ...instead.alternatives.flatMap(({ parts }) => parts.map(placedOfPart)),
  ];
}

function placedOfRow(row: BindingRow): readonly PlacedWords[] {
  return [
    { what: 'row', at: row.at, words: row.action.name },
    { what: 'who', at: row.who.at, words: whoWords(row.who.value) },
    ...row.alternatives.flatMap(({ parts }) => parts.map(placedOfPart)),
    ...row.alternatives.map(({ at, parts }) => ({ what: 'chord', at, words: parts[0]?.name ?? '' })),
    ...(row.gesture === null
      ? []
      : [
          { what: 'gesture', at: row.gesture.at, words: gestureWords(row.gesture.value) },
          ...('time' in row.gesture.value
            ? [
                {
                  what: 'time',
                  at: row.gesture.value.time.at,
                  words: row.gesture.value.time.name ?? row.gesture.value.time.text,
                },
              ]
            : []),
        ]),
    ...row.conditions.map(({ at, setting, value, is }) => ({
      what: 'condition',
      at,
      words: `${setting.name} is ${is ? '' : 'not '}${value}`,
    })),
    ...row.effects.map(effect => ({ what: 'effect', at: effect.at, words: effectWords(effect) })),
    ...[...row.insteadOf, ...row.alongWith].map(({ value, at }) => ({
      what: 'linked action',
      at,
      words: value.name,
    })),
  ];
}

function placedOfPart(part: ControlName): PlacedWords {
  const port = part.kind === 'control' && part.port !== null ? `${part.port} ` : '';
  return { what: 'control', at: part.at, words: `${port}${part.name}` };
}

const whoWords = (who: Who): string => (who.kind === 'player' ? who.player : who.kind);

function gestureWords(gesture: Gesture): string {
  if ('position' in gesture) return `${gesture.kind} ${gesture.position}`;
  return gesture.kind;
}

function effectWords(effect: Effect): string {
  if (effect.kind === 'go to') return `go to ${effect.mode.name}`;
  const value = effect.kind === 'set' ? effect.value : effect.by === 1 ? 'next' : 'previous';
  return `${effect.setting.name}: ${value}`;
}
