import { expect, it } from 'vitest';
import { compile } from '../../src/compile.js';
import { stepPlay } from '../../src/gestures/play.js';
import { findShowing } from '../../src/handoff/trace/showing.js';
import { inputOf } from '../../src/handoff/vectors/situation.js';
import { compileCase, listCases } from '../support/cases.js';
import { randomScheme } from '../support/random-scheme.js';

const RULES = [...new Set(listCases().map(({ rule }) => rule))];

// The checks find witnesses in machines of their own making; here each is played by the engine, as a player would.
it.each(RULES)('every witness in the cases of %s can be played, and does what it says', rule => {
  for (const each of listCases().filter(one => one.rule === rule)) {
    const { scheme, findings } = compileCase(each);
    if (scheme === null || !scheme.complete) continue;
    for (const finding of findings.filter(({ witness }) => witness !== undefined)) {
      const where = `${each.name}: ${finding.message}`;
      const found = findShowing(scheme, finding);
      expect(found, where).not.toBeNull();
      if (found === null) continue;
      expect(found.reads, where).toHaveLength(finding.witness?.steps.length ?? 0);
      expect(finding.consoles ?? [found.play.profile.name], where).toContain(found.play.profile.name);
      expect(finding.seats ?? [found.play.seats.name], where).toContain(found.play.seats.name);
      const first = stepPlay(found.play, found.state, inputOf(found.play, found.reads[0] ?? []));
      expect(new Set(first.fired.map(({ actionName }) => actionName)), where).toEqual(
        new Set(finding.witness?.steps[0]?.fires),
      );
    }
  }
});

it('every witness in made-up schemes can be played', () => {
  let count = 0;
  for (let seed = 0; seed < 120; seed++) {
    const { scheme, findings } = compile([{ path: 'scheme.md', text: randomScheme(seed) }]);
    if (scheme === null) throw new Error('no scheme');
    for (const finding of findings.filter(({ witness }) => witness !== undefined)) {
      count++;
      expect(findShowing(scheme, finding), `seed ${seed}: ${finding.message}`).not.toBeNull();
    }
  }
  expect(count).toBeGreaterThan(300);
});

it('a witness that says something else can’t be shown', () => {
  const [each] = listCases().filter(({ rule }) => rule === 'same-moment');
  if (each === undefined) throw new Error('no case');
  const { scheme, findings } = compileCase(each);
  const finding = findings.find(({ rule }) => rule === 'same-moment');
  if (scheme === null || finding?.witness === undefined) throw new Error('no witness');
  const { standard, steps } = finding.witness;
  expect(findShowing(scheme, finding)).not.toBeNull();
  const none = steps.map(step => ({ ...step, fires: [] }));
  expect(findShowing(scheme, { ...finding, witness: { standard, steps: none } })).toBeNull();
  const lost = steps.map(step => ({ ...step, engaged: [...step.engaged, 'left lever'] }));
  expect(findShowing(scheme, { ...finding, witness: { standard, steps: lost } })).toBeNull();
});
