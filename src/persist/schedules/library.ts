import {
  classesOf,
  emptyOverTable,
  type FinishingSchedule,
  type OverTable,
} from '../../tracker/trade/index.ts';
import { newClasses } from './new-classes.ts';
import { isGroup } from './explain-issue.ts';
import type { Replacement, ScheduleLibrary, ShippedTemplates } from './library-types.ts';
import type { SourcedProduct } from './make-product.ts';
import type { Problem } from './problem.ts';
import {
  isProductsFile,
  readProducts,
  readSchedule,
  type Products,
  type TextFile,
} from './read-file.ts';
import { readYaml, type YamlSource } from './yaml-source.ts';

/** A file of finishing schedules or products; `own` where it lies in the user's folder. */
export type ScheduleSourceFile = TextFile & { readonly own?: boolean };

/**
 * Reads all files together: products first, since schedules name them. A file with a problem is left out whole; the
 * others count. The user's files come after the program's and may replace a schedule or product by its id.
 * @param shipped the program's own templates where they are read already
 * @param table what may go over what, for the sequence of each schedule
 */
export function loadSchedules(
  files: readonly ScheduleSourceFile[],
  shipped?: ShippedTemplates,
  table: OverTable = emptyOverTable,
): ScheduleLibrary {
  const problems: Problem[] = [];
  const replacements: Replacement[] = [];
  const read = readAll(files, problems);

  const products = new Shelf<SourcedProduct>('product', problems, replacements);
  for (const [id, product] of Object.entries(shipped?.products ?? {})) {
    products.stock(id, { product, sources: shipped?.sources[id] ?? {} });
  }
  const withheld = new Map<string, string>();
  for (const { file, source } of read.filter((each) => isProductsFile(each.source))) {
    const reading = readProducts(source);
    if (reading.ok) {
      for (const [id, product] of Object.entries(reading.value)) {
        products.put(id, product, file, source, ['products', id]);
      }
    } else {
      problems.push(...reading.problems);
      for (const id of namesIn(source)) withheld.set(id, file.path);
    }
  }

  const shared: Products = products.all();
  const schedules = new Shelf<FinishingSchedule>('finishing schedule', problems, replacements);
  for (const schedule of shipped?.schedules ?? []) schedules.stock(schedule.id, schedule);
  for (const { file, source } of read.filter((each) => !isProductsFile(each.source))) {
    const reading = readSchedule(source, shared, withheld, table);
    if (reading.ok)
      schedules.put(reading.value.schedule.id, reading.value.schedule, file, source, ['id']);
    else problems.push(...reading.problems);
  }
  const each = Object.entries(shared);
  return {
    schedules: Object.values(schedules.all()).sort((one, other) =>
      one.name < other.name ? -1 : 1,
    ),
    products: Object.fromEntries(each.map(([id, { product }]) => [id, product])),
    sources: Object.fromEntries(each.map(([id, { sources }]) => [id, sources])),
    problems,
    replacements,
    remarks: read
      .filter(({ file }) => isOwn(file))
      .flatMap(({ source }) => newClasses(source, classesOf(table))),
  };
}

type ReadFile = { readonly file: ScheduleSourceFile; readonly source: YamlSource };

/** The program's files before the user's. */
function readAll(files: readonly ScheduleSourceFile[], problems: Problem[]): readonly ReadFile[] {
  const read: ReadFile[] = [];
  for (const file of files) {
    const reading = readYaml(file.path, file.text);
    if (reading.ok) read.push({ file, source: reading.source });
    else problems.push(...reading.problems);
  }
  return read.sort((one, other) => Number(isOwn(one.file)) - Number(isOwn(other.file)));
}

const isOwn = (file: ScheduleSourceFile): boolean => file.own === true;

/** Things by id: of two that came with the program the second is a mistake, one of the user's replaces the program's. */
class Shelf<Thing> {
  private readonly kept = new Map<string, { thing: Thing; own: boolean; file: string }>();
  private readonly kind: Replacement['kind'];
  private readonly problems: Problem[];
  private readonly replacements: Replacement[];

  constructor(kind: Replacement['kind'], problems: Problem[], replacements: Replacement[]) {
    this.kind = kind;
    this.problems = problems;
    this.replacements = replacements;
  }

  /** Takes what came with the program. */
  stock(id: string, thing: Thing): void {
    this.kept.set(id, { thing, own: false, file: 'the program' });
  }

  put(
    id: string,
    thing: Thing,
    file: ScheduleSourceFile,
    source: YamlSource,
    path: readonly string[],
  ): void {
    const before = this.kept.get(id);
    const own = isOwn(file);
    if (before !== undefined && before.own === own) {
      this.problems.push({
        file: file.path,
        ...source.placeOfName(path),
        field: path.join('.'),
        found: JSON.stringify(id),
        expected: `an id that no other ${this.kind} has`,
        says: `The ${this.kind} "${id}" is also in ${before.file}.`,
        todo: 'Give one of them another id.',
      });
      return;
    }
    if (before !== undefined) {
      const says = `${file.path} replaces the ${this.kind} "${id}" that came with the program.`;
      this.replacements.push({ kind: this.kind, id, file: file.path, says });
    }
    this.kept.set(id, { thing, own, file: file.path });
  }

  all(): Readonly<Record<string, Thing>> {
    return Object.fromEntries([...this.kept].map(([id, { thing }]) => [id, thing]));
  }
}

const namesIn = ({ value }: YamlSource): readonly string[] =>
  isGroup(value) && isGroup(value['products']) ? Object.keys(value['products']) : [];
