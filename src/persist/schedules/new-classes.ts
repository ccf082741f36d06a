import { nearest } from '../../tracker/trade/index.ts';
import { isGroup } from './explain-issue.ts';
import type { Problem } from './problem.ts';
import { entries, problemAt } from './raw-fields.ts';
import type { YamlSource } from './yaml-source.ts';

/**
 * Product classes of a file of the user's that nothing else knows, each where it stands first. That is no mistake, a new
 * kind of product is new; but a slip of the finger would leave out every rule and caution that go by the class.
 * @param known every class that the rules know; none where they could not be read
 */
export function newClasses(source: YamlSource, known: readonly string[]): readonly Problem[] {
  if (known.length === 0) return [];
  const seen = new Set(known.map((each) => each.toLowerCase()));
  const products = isGroup(source.value) ? entries(source.value['products']) : [];
  return products.flatMap(([id, { class: named }]) => {
    if (typeof named !== 'string' || seen.has(named.trim().toLowerCase())) return [];
    seen.add(named.trim().toLowerCase());
    const near = nearest(named, known);
    const meant = near.length === 0 ? '' : ` If ${near.join(' or ')} is meant, write that.`;
    return [
      {
        ...problemAt(source, ['products', id, 'class'], named, 'a class that the rules know', {
          says: `No rule knows the class "${named}": what it goes over, and cautions that go by its class, are not told.`,
          todo: `Its label and a sample board count.${meant}`,
        }),
        nearest: near,
      },
    ];
  });
}
