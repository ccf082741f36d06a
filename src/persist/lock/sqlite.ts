import type * as Sqlite from 'node:sqlite';

/**
 * Node's own SQLite, loaded when first needed. Some versions of Node 22 write a line to stderr that it is experimental;
 * that line would land in the middle of the screen, so this one warning is dropped while it loads.
 */
export function loadSqlite(): typeof Sqlite {
  const emitWarning = process.emitWarning.bind(process);
  const original = Object.getOwnPropertyDescriptor(process, 'emitWarning');
  process.emitWarning = (warning: string | Error, ...rest: unknown[]) => {
    if (!String(warning).includes('SQLite')) {
      Reflect.apply(emitWarning, undefined, [warning, ...rest]);
    }
  };
  try {
    return process.getBuiltinModule('node:sqlite');
  } finally {
    if (original) Object.defineProperty(process, 'emitWarning', original);
  }
}
