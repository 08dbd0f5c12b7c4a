import type { Scheme } from '../../language/model.js';
import type { Facts } from './facts.js';
import type { Situation } from './situations.js';

/** The facts of every situation of a scheme: what the rules are judged on. */
export interface Survey {
  readonly scheme: Scheme;
  readonly facts: readonly Facts[];
  /** What the actions' `Need` is, in a text that is the same while it is. */
  readonly needs: string;
}

/** Situations with the same facts, and the facts that they are to be compared with. */
export interface Company {
  readonly own: Facts;
  readonly situations: readonly Situation[];
  readonly peers: readonly Facts[];
}

/** Every situation once, with all consoles that have the same seats and standard. */
export const acrossConsoles = (survey: Survey): readonly Company[] =>
  companiesOf(survey, (one, other) => one.seats === other.seats);

/** Every situation once, with all seats rows of the same console and standard. */
export const acrossSeats = (survey: Survey): readonly Company[] =>
  companiesOf(survey, (one, other) => one.console === other.console);

function companiesOf(
  { facts }: Survey,
  isPeer: (one: Situation, other: Situation) => boolean,
): readonly Company[] {
  return facts.flatMap(own => {
    const companies = new Map<string, { situations: Situation[]; peers: readonly Facts[] }>();
    for (const situation of own.offer.situations) {
      const peers = facts.filter(({ offer }) =>
        offer.situations.some(each => each.standard === situation.standard && isPeer(each, situation)),
      );
      const key = peers.map(each => facts.indexOf(each)).join();
      const company = companies.get(key) ?? { situations: [], peers };
      companies.set(key, company);
      company.situations.push(situation);
    }
    return [...companies.values()].map(company => ({ own, ...company }));
  });
}
