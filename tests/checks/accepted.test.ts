import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.js';
import { smallScheme } from '../cli/test-terminal.js';

/** A scheme whose one action has no words and whose mode reads a key that is not there. */
function findingsOf(accepted: string) {
  const scheme = smallScheme('Tin Whistle', 'key 5').replace('Play the note', '');
  const table = `\n## Accepted\n\n| Rule | Where | Why |\n| --- | --- | --- |\n${accepted}\n`;
  const { findings } = compile([{ path: 'game.md', text: scheme + table }]);
  return findings
    .filter(({ rule }) => ['no-such-control', 'no-words', 'unused-accepted', 'missing-phrase'].includes(rule))
    .map(({ rule, severity, why }) => [rule, severity, why].filter(Boolean).join(', '));
}

const BOTH = ['no-words, warning', 'no-such-control, error'];

describe('an accepted row', () => {
  it.each([
    ['the whole scheme', '| no-such-control | — | Meant |'],
    ['the mode', '| no-such-control | Tune | Meant |'],
    ['the action and the seats row', '| no-such-control | Blow; Solo | Meant |'],
    ['names in other case', '| No-Such-Control | tune ; BLOW | Meant |'],
  ])('for %s covers the finding and gives its reason', (_, row) => {
    expect(findingsOf(row)).toEqual(['no-words, warning', 'no-such-control, accepted, Meant']);
  });

  it('of another rule, or for something else as well, covers nothing and is reported', () => {
    expect(findingsOf('| ghost-chord | Tune | Meant |')).toEqual([...BOTH, 'unused-accepted, error']);
    expect(findingsOf('| no-words | Blow; Tune | Meant |')).toEqual([...BOTH, 'unused-accepted, error']);
    expect(findingsOf('| no-such-control | four-switch | Meant |')).toEqual([
      ...BOTH,
      'unused-accepted, error',
    ]);
  });

  it('twice for one finding is used both times, the first giving the reason', () => {
    const rows = '| no-words | — | First |\n| no-words | Blow | Second |';
    expect(findingsOf(rows)).toEqual(['no-words, accepted, First', 'no-such-control, error']);
  });

  it('can’t keep a fault of the language, which leaves a hole in the scheme', () => {
    expect(findingsOf('| unused-accepted | — | Meant |')).toEqual([...BOTH, 'unused-accepted, error']);
    const table = '\n## Accepted\n\n| Rule | Why |\n| --- | --- |\n| unknown-name | Meant |\n';
    const { findings } = compile([
      { path: 'game.md', text: smallScheme().replace('joystick', 'joystik') + table },
    ]);
    expect(findings.map(({ rule, severity }) => [rule, severity])).toContainEqual(['unknown-name', 'error']);
  });

  it('is not called unused where the rest of the scheme could not be checked', () => {
    const table =
      '\n## Accepted\n\n| Rule | Where | Why |\n| --- | --- | --- |\n| lost-action | Tune | Meant |\n';
    const text = smallScheme().replace('joystick', 'joystik') + table;
    const rules = compile([{ path: 'game.md', text }]).findings.map(({ rule }) => rule);
    expect(rules).toContain('unknown-name');
    expect(rules).not.toContain('unused-accepted');
  });
});
