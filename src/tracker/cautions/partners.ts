import type { Piece, PlannedStep } from '../bench/piece.ts';
import type { Caution } from './caution.ts';
import { chemicalsOf, leftOn, type Moment } from './chemicals.ts';
import { capital } from './capital.ts';

/** What takes out what is left in the wood: said where something is rinsed, and where the wrong thing is put on. */
export function partnersFor(piece: Piece, step: PlannedStep, moment: Moment): readonly Caution[] {
  const { neutralisers, pairs } = moment.rules;
  const own = chemicalsOf(piece, step, moment.rules).map(({ name }) => name);
  const isRinse = step.stepClass === 'rinse, neutralise';
  if (!isRinse && own.length === 0) return [];
  return leftOn(piece, step, moment).flatMap(
    ({ chemical: { name }, work, ended }): readonly Caution[] => {
      const partner = neutralisers.find(({ left }) => left === name);
      if (partner === undefined || ended) return [];
      // What is dangerous besides is said as that.
      const wrong = own.find(
        (each) =>
          partner.wrong.includes(each) &&
          !pairs.some(({ of }) => of.includes(each) && of.includes(name)),
      );
      const same = { id: `partner: ${name}`, deadly: false, source: partner.source };
      if (wrong !== undefined)
        return [
          {
            ...same,
            ofTheMoment: true,
            says: `${capital(wrong)} is the wrong partner for ${name} (${work.step.name}): ${partner.because}. Right: ${partner.right}.`,
          },
        ];
      if (!isRinse) return [];
      const takes =
        partner.takes === undefined
          ? ''
          : ` 1 g of it takes ${partner.takes.grams} g of ${partner.takes.of}.`;
      return [
        {
          ...same,
          ofTheMoment: false,
          says: `In the wood: ${name} (${work.step.name}). It wants ${partner.right}.${takes}`,
        },
      ];
    },
  );
}
