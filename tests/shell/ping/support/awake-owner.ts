import {spawn} from 'node:child_process'
import {createAwake} from '../../../../src/shell/ping/awake.ts'

/** A process that wants the machine awake and says so once it is; runs until it is ended from outside. */
const awake = createAwake({platform: 'linux', env: process.env, spawn})
awake.want('Oak chest, B on')
let said = false
setInterval(() => {
  if (said || !awake.state().kept) return
  said = true
  console.log('kept')
  if (process.argv[2] === 'leave') process.exit()
}, 10)
