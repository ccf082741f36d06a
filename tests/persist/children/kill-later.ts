/** `node kill-later.ts PID MS`: kills that process after so long and writes when it did, in ms since 1970. */
const [pid, ms] = process.argv.slice(2).map(Number);
setTimeout(() => {
  process.kill(pid ?? NaN, 'SIGKILL');
  console.log(performance.timeOrigin + performance.now());
}, ms);
