import type { PlannedStamp, Product, Step } from '../../tracker/trade/index.ts';
import type { FinishingSchedule } from '../../tracker/trade/index.ts';
import type { StampEvent, WindowRule } from '../../tracker/windows/index.ts';
import { fingerprint } from './fingerprint.ts';
import { makeTrial } from './make-trial.ts';
import { makeWindow } from './make-window.ts';
import { makeCondition, makeQuestion, trialOf } from './piece-form.ts';
import type { ScheduleFile, StepForm } from './schedule-form.ts';

/** Figures of a step's own windows that belong to no product: no air moves them. */
const noProduct = { chemistry: 'reaction', statedFor: { tempC: 23, rh: 50 } } as const;

/** @param available products that the steps may name; only those they do name are copied */
export function makeSchedule(
  form: ScheduleFile,
  available: Readonly<Record<string, Product>>,
): FinishingSchedule {
  const steps = form.steps.map((step) => makeStep(step, available));
  const used = [...new Set(steps.flatMap((step) => step.product ?? []))].sort();
  const products = Object.fromEntries(
    used.flatMap((id) => {
      const product = available[id];
      return product === undefined ? [] : [[id, product] as const];
    }),
  );
  const { id, name, summary } = form;
  const content = { id, name, summary, steps, products };
  return { ...content, hash: fingerprint(content) };
}

function makeStep(form: StepForm, available: Readonly<Record<string, Product>>): Step {
  const product = form.product === undefined ? undefined : available[form.product];
  const around = product ?? noProduct;
  const windows = Object.entries(form.windows ?? {}).map(([id, row]) =>
    makeWindow(id, row, around),
  );
  return {
    id: form.id,
    name: form.name,
    stepClass: form.class,
    minutes: form.minutes,
    driver: form.driver,
    ...(form['minutes for'] === undefined ? {} : { minutesFor: form['minutes for'] }),
    setupMinutes: form.setup,
    ...(form.product === undefined ? {} : { product: form.product }),
    ...(form.passes === undefined ? {} : { passes: form.passes }),
    stamps: (form.stamps ?? []).map(makeStamp),
    windows: [...windows.flatMap((each) => each.any), ...trialRules(form)],
    needs: form.needs ?? [],
    ...(form.grit === undefined ? {} : { grit: form.grit }),
    ...(form.dusty === undefined ? {} : { dusty: form.dusty }),
    ...(form['clean air'] === undefined ? {} : { cleanAir: form['clean air'] }),
    ...(form.fumes === undefined ? {} : { fumes: form.fumes }),
    ...(form['until right'] === undefined ? {} : { untilRight: form['until right'] }),
    cautions: form.cautions ?? [],
    ...dependsOnPiece(form),
  };
}

function dependsOnPiece(
  form: StepForm,
): Pick<Step, 'onlyIf' | 'asks' | 'minutesTimes' | 'trialFor'> {
  const tries = form['try first'];
  return {
    ...(form['only if'] === undefined ? {} : { onlyIf: makeCondition(form['only if']) }),
    ...(form.asks === undefined ? {} : { asks: makeQuestion(form.asks) }),
    ...(form['minutes times'] === undefined ? {} : { minutesTimes: form['minutes times'] }),
    ...(tries === undefined ? {} : { trialFor: trialOf(tries).steps }),
  };
}

const trialRules = (form: StepForm): readonly WindowRule[] =>
  form['try first'] === undefined ? [] : [makeTrial(trialOf(form['try first']).judgeAfter)];

/** What the foot of the screen says where a file has no words of its own. */
const usualWords: Partial<Record<StampEvent, string>> = {
  'first-stroke': 'first stroke on',
  'section-on': 'on',
  'section-off': 'wiped',
};

const perSection: ReadonlySet<StampEvent> = new Set(['section-on', 'section-off']);

function makeStamp(form: NonNullable<StepForm['stamps']>[number]): PlannedStamp {
  const { event, agent } = 'stamp' in form ? form.stamp : form;
  const usual = usualWords[event] ?? event.replaceAll('-', ' ');
  const says = 'says' in form ? form.says : agent === undefined ? usual : `${agent}, ${usual}`;
  return {
    event,
    ...(agent === undefined ? {} : { agent }),
    says,
    ...(perSection.has(event) ? { perSection: true } : {}),
  };
}
