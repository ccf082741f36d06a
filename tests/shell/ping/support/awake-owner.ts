import { spawn } from 'node:child_process';
import { createAwake } from '../../../../src/shell/ping/awake.ts';

/** A process that wants the machine awake and says so once it is; then it has nothing to do, or stays if told to. */
const awake = createAwake({ platform: 'linux', env: process.env, spawn });
awake.want('Oak chest, B on');
const watch = setInterval(() => {
  if (!awake.state().kept) return;
  clearInterval(watch);
  console.log('kept');
  if (process.argv[2] === 'stay') setInterval(() => {}, 1000);
}, 10);
