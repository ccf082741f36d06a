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

/** The folder for compiled code that belongs to this user alone, or '' when there is none. */
function cacheFolder() {
  var path = require('path');
  var home = require('os').homedir();
  var base = process.env.XDG_CACHE_HOME || '';
  if (!path.isAbsolute(base)) {
    if (!home) return '';
    if (process.platform === 'win32') {
      base = process.env.LOCALAPPDATA || path.join(home, 'AppData', 'Local');
    } else if (process.platform === 'darwin') {
      base = path.join(home, 'Library', 'Caches');
    } else {
      base = path.join(home, '.cache');
    }
  }
  return path.join(base, 'recoat', 'compiled');
}

/** Keeps the compiled form of the program between starts; only ever a gain in speed. */
function keepCompiledCode() {
  try {
    var folder = cacheFolder();
    if (folder) require('module').enableCompileCache(folder);
  } catch (_error) {
    // A home that can't be found or written costs a few milliseconds, no more.
  }
}

if (isTooOld(process.versions.node)) {
  process.stderr.write(
    'recoat needs Node.js ' + NEEDED_MAJOR + '.' + NEEDED_MINOR + ' or newer and found ' +
      process.versions.node + ' (' + process.execPath + '): ' +
      "install a current Node.js, from its own site or your system's packages, then start again.\n"
  );
  process.exit(1);
} else {
  keepCompiledCode();
  require('./main.cjs');
}
