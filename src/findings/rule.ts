export type Severity = 'error' | 'warning' | 'note';

export type RuleFamily = 'language' | 'conflicts' | 'coverage' | 'wiring' | 'timing' | 'words';

/**
 * One rule of the catalogue. Texts hold named parameters in braces: `{action}`. A parameter of `message`
 * must be given whenever the rule is reported; `waysOut` may only use parameters of `message`.
 */
export interface Rule {
  readonly severity: Severity;
  /** What goes wrong, in one sentence that names the things concerned. */
  readonly message: string;
  /** What it does to the player (or the reader of the scheme), in one line. */
  readonly effect: string;
  /** At least one; a finding may bring its own that fit the case better. */
  readonly waysOut: readonly string[];
  /** For `explain`: what the rule looks for and why, in a few sentences of Markdown. */
  readonly explanation: string;
  /** For `explain`: a piece of a scheme that has the fault. */
  readonly example: string;
}

type ParametersOf<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | ParametersOf<Rest>
  : never;

/** The parameters a message asks for. */
export type MessageParameters<Text extends string> = Readonly<Record<ParametersOf<Text>, string | number>>;

/** The text with each `{name}` replaced by its parameter. */
export function fillText(text: string, parameters: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{([A-Za-z]+)\}/g, (whole, name: string) =>
    Object.hasOwn(parameters, name) ? String(parameters[name]) : whole,
  );
}
