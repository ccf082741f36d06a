import { addPieceScreen } from './add-piece/index.ts';
import { benchScreen } from './bench/index.ts';
import { conditionsScreen } from './conditions/index.ts';
import { confirmScreen } from './confirm/index.ts';
import { holdScreen } from './hold/index.ts';
import { hoursScreen } from './hours/index.ts';
import { importHoursScreen } from './import-hours/index.ts';
import { jobCardScreen } from './job-card/index.ts';
import { keysScreen } from './keys-sheet/index.ts';
import { leaveScreen } from './leave/index.ts';
import { noteScreen } from './note/index.ts';
import { oddTimerScreen } from './odd-timer/index.ts';
import { otherStampScreen } from './other-stamp/index.ts';
import { pastScreen } from './past-pieces/index.ts';
import { pieceScreen } from './piece/index.ts';
import { useProductScreen } from './use-product/index.ts';
import { potsScreen } from './pots/index.ts';
import { pingsScreen } from './pings/index.ts';
import type { ScreenModule } from './screen.ts';
import type { Screen, ScreenName } from './screens.ts';
import { questionScreen } from './question/index.ts';
import { settingsScreen } from './settings/index.ts';
import { shutScreen } from './shut-up-shop/index.ts';
import { troubleScreen } from './trouble/index.ts';
import { whichToPutDownScreen } from './which-to-put-down/index.ts';
import { whyLateScreen } from './why-late/index.ts';
import { withoutTrialScreen } from './without-trial/index.ts';

type ScreenRegistry = {
  readonly [Name in ScreenName]: ScreenModule<Extract<Screen, { is: Name }>>;
};

/** Which module draws a screen and hears its keys. A new screen is one more line here and one more state in screens.ts. */
export const modules: ScreenRegistry = {
  bench: benchScreen,
  'add piece': addPieceScreen,
  piece: pieceScreen,
  trouble: troubleScreen,
  'why late': whyLateScreen,
  'other stamp': otherStampScreen,
  'which to put down': whichToPutDownScreen,
  question: questionScreen,
  'without trial': withoutTrialScreen,
  confirm: confirmScreen,
  hold: holdScreen,
  note: noteScreen,
  conditions: conditionsScreen,
  'odd timer': oddTimerScreen,
  pots: potsScreen,
  'use product': useProductScreen,
  keys: keysScreen,
  pings: pingsScreen,
  settings: settingsScreen,
  'shut up shop': shutScreen,
  leave: leaveScreen,
  hours: hoursScreen,
  'import hours': importHoursScreen,
  'job card': jobCardScreen,
  'past pieces': pastScreen,
};
