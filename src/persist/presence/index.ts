export { leaveKeeperMark, readKeeperMark, takeKeeperMark } from './keeper-mark.ts';
export { isKeeperPresent, isScreenPresent, presentAsKeeper, presentAsScreen } from './presence.ts';
