#!/usr/bin/env node
// The one file that every version of Node must be able to parse, so that a
// person with an old one reads what to do instead of a syntax error. Hence no
// const, no arrow function, no template string here.
'use strict';

var NEEDED_MAJOR = 22;
var NEEDED_MINOR = 13;

function isTooOld(version) {
  var parts = version.split('.');
  var major = parseInt(parts[0], 10);
  var minor = parseInt(parts[1], 10);
  return major < NEEDED_MAJOR || (major === NEEDED_MAJOR && minor < NEEDED_MINOR);
}

if (isTooOld(process.versions.node)) {
  process.stderr.write(
    'recoat needs Node.js ' + NEEDED_MAJOR + '.' + NEEDED_MINOR + ' or newer and found ' +
      process.versions.node + ' (' + process.execPath + '): ' +
      "install a current Node.js, from its own site or your system's packages, then start again.\n"
  );
  process.exit(1);
} else {
  require('./load-program.cjs').loadProgram(__dirname, require);
}
