import type { Fact } from '../../tracker/bench/index.ts';
import {
  benchFile,
  conditionsFile,
  pingsFile,
  type Contents,
  type FactsName,
  type StoreFile,
} from '../folder/names.ts';
import { joinFacts, withoutNeedless } from '../join-facts.ts';
import { wrongWithFact } from '../schemas/check.ts';
import type { Appending, Loaded } from '../store.ts';

/** A file and all facts that it holds once the new ones are added. */
export type Appended = {
  readonly file: StoreFile<FactsName>;
  readonly contents: Contents[FactsName];
};

/**
 * Which files change, and to what. Facts that are there already are left out.
 *
 * @throws if a fact does not fit its schema: nothing that could not be read back may be written
 */
export function appended(current: Loaded, append: Appending): readonly Appended[] {
  return [
    appendedTo(benchFile, current.bench, append.bench),
    thinned(conditionsFile, current.conditions, append.conditions, append.needless),
    thinned(pingsFile, current.pings, append.pings, append.needless),
  ].filter((change) => change !== null);
}

function thinned<Name extends 'conditions' | 'pings'>(
  file: StoreFile<Name>,
  before: Contents[Name],
  added: Contents[Name] | undefined,
  needless: ReadonlySet<string> | undefined,
): Appended | null {
  const kept = withoutNeedless<Fact>(before, needless) as Contents[Name];
  const grown = appendedTo(file, kept, added);
  return grown === null && kept !== before ? { file, contents: kept } : grown;
}

export function appendedTo<Name extends FactsName>(
  file: StoreFile<Name>,
  before: Contents[Name],
  added: Contents[Name] | undefined,
): Appended | null {
  const contents: Contents[FactsName] = joinFacts<Fact>(before, added) as Contents[FactsName];
  for (const fact of contents.slice(before.length)) {
    const wrong = wrongWithFact(fact, file.holds);
    if (wrong !== null) {
      throw new Error(`fact ${fact.id} for ${file.name}.json can't be stored: ${wrong}`);
    }
  }
  return contents === before ? null : { file, contents };
}
