export type { Caution } from './caution.ts';
export { cautionsOfStep, type StepCautions } from './cautions-of-step.ts';
export { ofTheMoment, takenUp, type TakenUp } from './taken-up.ts';
