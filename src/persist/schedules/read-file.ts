import * as z from 'zod/mini';
import {
  emptyOverTable,
  type FinishingSchedule,
  type OverTable,
} from '../../tracker/trade/index.ts';
import { crossChecks } from './cross-checks.ts';
import { explainIssue, isGroup, wrong } from './explain-issue.ts';
import { makeProduct, type SourcedProduct } from './make-product.ts';
import { makeSchedule } from './make-schedule.ts';
import { overProblems } from './over-checks.ts';
import { askedBefore, countedMinutes, reservedAnswers, trialsBefore } from './piece-checks.ts';
import { needsLeftOut } from './needs-left-out.ts';
import { byPlace, type Problem } from './problem.ts';
import { productsFile } from './product-form.ts';
import { scheduleFile, type ScheduleFile } from './schedule-form.ts';
import { doubledWindows, unknownProducts, unmetNeeds } from './step-checks.ts';
import { readYaml, type YamlSource } from './yaml-source.ts';

/** A file as it was read from disk; `path` is what problems call it. */
export type TextFile = { readonly path: string; readonly text: string };

export type FileReading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type Products = Readonly<Record<string, SourcedProduct>>;

/** A schedule with the products that its own file brings along. */
export type ReadSchedule = { readonly schedule: FinishingSchedule; readonly ownProducts: Products };

/** What a file is, told by its fields: a products file has no steps. */
export function isProductsFile(source: YamlSource): boolean {
  return (
    isGroup(source.value) &&
    'products' in source.value &&
    !('steps' in source.value) &&
    !('id' in source.value)
  );
}

/** Reads a products file; all of its problems, or all of its products. */
export function readProducts(source: YamlSource): FileReading<Products> {
  const form = conform(productsFile, source);
  return form.ok
    ? { ok: true, value: makeProducts(form.value.products, form.value.sources) }
    : form;
}

/**
 * Reads one finishing schedule from its text.
 * @param shared products that its steps may name, beside those of its own file
 * @param withheld ids of products whose file has problems, by that file: a step that names one is told which file to mend
 * @param table what may go over what, for the sequence of its steps
 */
export function readScheduleFile(
  file: TextFile,
  shared: Products,
  withheld: ReadonlyMap<string, string> = new Map(),
  table: OverTable = emptyOverTable,
): FileReading<ReadSchedule> {
  const reading = readYaml(file.path, file.text);
  return reading.ok ? readSchedule(reading.source, shared, withheld, table) : reading;
}

export function readSchedule(
  source: YamlSource,
  shared: Products,
  withheld: ReadonlyMap<string, string>,
  table: OverTable,
): FileReading<ReadSchedule> {
  const form = conform(scheduleFile, source);
  const root = isGroup(source.value) ? source.value : {};
  const ownIds = isGroup(root['products']) ? Object.keys(root['products']) : [];
  const unknown = unknownProducts(source, root, [...ownIds, ...Object.keys(shared)], withheld);
  if (!form.ok) return { ok: false, problems: [...form.problems, ...unknown].sort(byPlace) };
  if (unknown.length > 0) return { ok: false, problems: unknown };
  const ownProducts = makeProducts(form.value.products ?? {}, form.value.sources);
  const available = Object.fromEntries(
    Object.entries({ ...shared, ...ownProducts }).map(([id, { product }]) => [id, product]),
  );
  const problems = [
    ...unmetNeeds(source, form.value, available),
    ...doubledWindows(source, form.value, available),
    ...askedBefore(source, form.value),
    ...reservedAnswers(source, form.value),
    ...trialsBefore(source, form.value),
    ...countedMinutes(source, form.value),
    ...needsLeftOut(source, form.value, available),
  ];
  if (problems.length > 0) return { ok: false, problems: problems.sort(byPlace) };
  const schedule = makeSchedule(form.value, available);
  const misfits = overProblems(source, form.value, schedule, table);
  if (misfits.length > 0) return { ok: false, problems: misfits };
  return { ok: true, value: { schedule, ownProducts } };
}

/** Holds a file against its form and the checks between fields; nothing of it is taken if anything is wrong. */
export function conform<Form extends z.core.$ZodType>(
  form: Form,
  source: YamlSource,
): FileReading<z.output<Form>> {
  if (!isGroup(source.value) || Array.isArray(source.value)) {
    return {
      ok: false,
      problems: [wrong(source, [], source.value, 'fields with their values, one a line')],
    };
  }
  const parsed = z.safeParse(form, source.value);
  const between = crossChecks(source);
  if (parsed.success && between.length === 0) return { ok: true, value: parsed.data };
  const issues = parsed.success
    ? []
    : parsed.error.issues.flatMap((issue) => explainIssue(issue, source));
  return { ok: false, problems: [...withoutMistyped(issues), ...between].sort(byPlace) };
}

/** A field that is missing because its name was mistyped is told once, where it stands under the wrong name. */
function withoutMistyped(issues: readonly Problem[]): readonly Problem[] {
  const group = (field: string): string => field.slice(0, Math.max(0, field.lastIndexOf('.')));
  const typed = issues.flatMap(({ field, nearest: [meant] = [] }) =>
    meant === undefined ? [] : [`${group(field)}.${meant}`],
  );
  return issues.filter(
    ({ field, found }) =>
      found !== 'nothing' || !typed.includes(`${group(field)}.${field.split('.').at(-1) ?? ''}`),
  );
}

function makeProducts(
  forms: NonNullable<ScheduleFile['products']>,
  named: Readonly<Record<string, string>>,
): Products {
  return Object.fromEntries(
    Object.entries(forms).map(([id, form]) => [id, makeProduct(id, form, named)]),
  );
}
