import type { TradeRules } from '../../tracker/trade/index.ts';
import { byPlace, type Problem } from '../schedules/problem.ts';
import { conform, type FileReading, type TextFile } from '../schedules/read-file.ts';
import { readYaml } from '../schedules/yaml-source.ts';
import { cautionsFile } from './cautions-form.ts';
import { makeOverTable, makeRules } from './make-rules.ts';
import { overFile } from './over-form.ts';
import { cautionChecks, overChecks } from './rule-checks.ts';

/** The two files of rules, read together: cautions name the groups of the table. All of their problems, or the rules. */
export function readRuleFiles(over: TextFile, cautions: TextFile): FileReading<TradeRules> {
  const overYaml = readYaml(over.path, over.text);
  if (!overYaml.ok) return overYaml;
  const cautionsYaml = readYaml(cautions.path, cautions.text);
  if (!cautionsYaml.ok) return cautionsYaml;
  const overForm = conform(overFile, overYaml.source);
  if (!overForm.ok) return overForm;
  const cautionsForm = conform(cautionsFile, cautionsYaml.source);
  if (!cautionsForm.ok) return cautionsForm;
  const table = makeOverTable(overForm.value);
  const problems: readonly Problem[] = [
    ...overChecks(overYaml.source, overForm.value),
    ...cautionChecks(cautionsYaml.source, cautionsForm.value, table.groups),
  ];
  if (problems.length > 0) return { ok: false, problems: problems.toSorted(byPlace) };
  return { ok: true, value: makeRules(table, cautionsForm.value) };
}
