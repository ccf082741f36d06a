import type { Finding } from '../../persist/checkup/finding.ts';
import { wrapWords } from '../../views/drawing/wrap.ts';

const columns = 80;
const titles: Readonly<Record<Finding['state'], string>> = {
  wrong: 'Wrong',
  note: 'Worth knowing',
  'in order': 'In order',
};

/** What is wrong first, each with what to do. */
export function checkupLines(findings: readonly Finding[]): readonly string[] {
  const wrong = findings.filter(({ state }) => state === 'wrong').length;
  const states = (['wrong', 'note', 'in order'] as const).filter((state) =>
    findings.some((finding) => finding.state === state),
  );
  return [
    ...states.flatMap((state) => [
      `${titles[state]}:`,
      ...findings.filter((finding) => finding.state === state).flatMap(linesOf),
      '',
    ]),
    wrong === 0
      ? 'Nothing is wrong.'
      : wrong === 1
        ? 'One thing is wrong.'
        : `${wrong} things are wrong.`,
  ];
}

const linesOf = ({ about, says, todo }: Finding): readonly string[] => {
  const label = 11;
  return [says, ...(todo === null ? [] : [`-> ${todo}`])]
    .flatMap((text) => wrapWords(text, columns - label - 2))
    .map((line, index) => `  ${(index === 0 ? about : '').padEnd(label)}${line}`);
};
