import { leaveOutOfLearning } from './learning.ts';
import type { Intent, IntentContext } from '../intents.ts';
import { accept, refuse, type Outcome } from '../outcome.ts';
import type { Bench } from '../bench.ts';
import { answerQuestion } from './answer.ts';
import { check } from './checks.ts';
import { factAt, fromTheFuture } from './context.ts';
import { tellCoatWeight } from './coat-weight.ts';
import { bringBack, correctSession, takeBack } from './corrections.ts';
import { putDown } from './hands.ts';
import { pickUp } from './pick-up.ts';
import { explainLateness } from './lateness.ts';
import { importHours, takeOutImport } from './imports.ts';
import { matchPieces } from './matches.ts';
import { readMoistureOf } from './moisture.ts';
import { moveLastStamp } from './move-stamp.ts';
import { describePiece } from './descriptions.ts';
import { carryIn, liftHold, placeHold } from './holds.ts';
import { nameParts } from './parts.ts';
import { addPiece, putBackOnBench, removePiece, takeOffBench, writeNote } from './pieces.ts';
import { chooseProduct } from './choose-product.ts';
import { mixPot, movePot, washOutPot } from './pots.ts';
import { doStamp } from './outright-stamp.ts';
import { doDone, doFirstStroke, doNextSection, doNextStamp } from './stamps.ts';
import { insertStep, moveStep, repeatStep, rewordStep, skipStep } from './steps.ts';
import { takeAlong } from './take-along.ts';
import { closeTimer, startTimer } from './timers.ts';

/** The one door for all changes: an intent gives new facts, or a refusal that says why. Nothing else happens. */
export function decide(bench: Bench, intent: Intent, context: IntentContext): Outcome {
  const future = fromTheFuture(intent, context);
  if (future) return future;
  switch (intent.do) {
    case 'add piece':
      return addPiece(bench, intent, context);
    case 'describe piece':
      return describePiece(bench, intent, context);
    case 'name parts':
      return nameParts(bench, intent, context);
    case 'insert step':
      return insertStep(bench, intent, context);
    case 'repeat step':
      return repeatStep(bench, intent, context);
    case 'move step':
      return moveStep(bench, intent, context);
    case 'skip step':
      return skipStep(bench, intent, context);
    case 'reword step':
      return rewordStep(bench, intent, context);
    case 'answer':
      return answerQuestion(bench, intent, context);
    case 'use product':
      return chooseProduct(bench, intent, context);
    case 'place hold':
      return placeHold(bench, intent, context);
    case 'carry in':
      return carryIn(bench, intent, context);
    case 'lift hold':
      return liftHold(bench, intent, context);
    case 'take off bench':
      return takeOffBench(bench, intent, context);
    case 'put back on bench':
      return putBackOnBench(bench, intent, context);
    case 'remove piece':
      return removePiece(bench, intent, context);
    case 'write note':
      return writeNote(bench, intent, context);
    case 'pick up':
      return pickUp(bench, intent, context);
    case 'take along':
      return takeAlong(bench, intent, context);
    case 'put down':
      return putDown(bench, intent, context);
    case 'next stamp':
      return doNextStamp(bench, intent, context);
    case 'first stroke':
      return doFirstStroke(bench, intent, context);
    case 'next section':
      return doNextSection(bench, intent, context);
    case 'done':
      return doDone(bench, intent, context);
    case 'stamp':
      return doStamp(bench, intent, context);
    case 'check':
      return check(bench, intent, context);
    case 'match pieces':
      return matchPieces(bench, intent, context);
    case 'tell coat weight':
      return tellCoatWeight(bench, intent, context);
    case 'explain lateness':
      return explainLateness(bench, intent, context);
    case 'read moisture':
      return readMoistureOf(bench, intent, context);
    case 'move stamp':
      return moveLastStamp(bench, intent, context);
    case 'start timer':
      return startTimer(bench, intent, context);
    case 'close timer':
      return closeTimer(bench, intent, context);
    case 'mix pot':
      return mixPot(bench, intent, context);
    case 'wash out pot':
      return washOutPot(bench, intent, context);
    case 'move pot':
      return movePot(bench, intent, context);
    case 'correct session':
      return correctSession(bench, intent, context);
    case 'leave out of learning':
      return leaveOutOfLearning(bench, intent, context);
    case 'import hours':
      return importHours(bench, intent, context);
    case 'take out import':
      return takeOutImport(bench, intent, context);
    case 'take back':
      return takeBack(bench);
    case 'bring back':
      return bringBack(bench);
    case 'shut up shop': {
      if (intent.backAt !== null && intent.backAt < context.now)
        return refuse('Not noted: you would be back before now.');
      const body = { answers: intent.answers, backAt: intent.backAt };
      return accept([factAt(context, { kind: 'shop-shut', body })], 'shut up shop');
    }
    case 'deal with rags':
      return accept([factAt(context, { kind: 'rags-dealt-with', body: {} })], 'rags dealt with');
    case 'note clock step':
      if (!Number.isFinite(intent.byMs)) return refuse('Not noted: that is no length of time.');
      return accept([{ kind: 'clock-stepped', body: { byMs: intent.byMs } }], 'clock set');
  }
}
