export { leaveKeeperMark, readKeeperMark, takeKeeperMark } from './keeper-mark.ts';
export {
  isKeeperPresent,
  isScreenPresent,
  presentAsKeeper,
  presentAsScreen,
  type Presence,
} from './presence.ts';
