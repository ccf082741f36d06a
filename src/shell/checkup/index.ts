export { checkClock } from './check-clock.ts';
export { checkKeeper } from './check-keeper.ts';
export { checkAwake, checkHook, checkNotifier } from './check-pings.ts';
export { checkTerminal } from './check-terminal.ts';
