import { findingsAbout, type Finding } from '../../persist/checkup/index.ts';
import type { Settings } from '../../tracker/settings/index.ts';
import { fewestColumns, fewestRows } from '../../views/too-small.ts';
import { chooseTheme } from '../../views/theme/index.ts';

const { fine, note, wrong } = findingsAbout('terminal');

/** What a terminal says of itself; a size of null where none is there. */
export type TerminalSeen = {
  readonly size: { readonly columns: number; readonly rows: number } | null;
  readonly env: NodeJS.ProcessEnv;
};

const usual = { columns: 80, rows: 24 };

/** Whether the screen has room, and which colours and signs it draws with. */
export function checkTerminal({ size, env }: TerminalSeen, settings: Settings): readonly Finding[] {
  if (size === null)
    return [note('No terminal is here to look at.', 'Run recoat checkup in the one you use.')];
  if (env['TERM'] === 'dumb')
    return [
      wrong(
        'This terminal (TERM=dumb) can place nothing: the screen is not shown, only text.',
        'Use another terminal, or set TERM to what it is.',
      ),
    ];
  const { columns, rows } = size;
  const shown = `${columns} columns and ${rows} rows`;
  const { colour, glyphs } = chooseTheme(settings, env);
  const sized =
    columns < fewestColumns || rows < fewestRows
      ? wrong(
          `The terminal has ${shown}: too little for the bench.`,
          `Make it ${fewestColumns} by ${fewestRows} or more; ${usual.columns} by ${usual.rows} shows all.`,
        )
      : columns < usual.columns || rows < usual.rows
        ? note(`The terminal has ${shown}; ${usual.columns} by ${usual.rows} shows more.`)
        : fine(`The terminal has ${shown}.`);
  const coloured =
    colour === 'none' || colour === 'bare'
      ? 'without colour'
      : colour.startsWith('16')
        ? 'with 16 colours'
        : 'with all colours';
  const signs =
    glyphs === 'ascii' && settings.glyphs === 'auto'
      ? note(
          `It is drawn ${coloured} in plain ASCII: nothing says that this terminal takes UTF-8, or how wide its signs are.`,
          'If it does: recoat settings glyphs blocks',
        )
      : fine(`It is drawn ${coloured}, in ${glyphs === 'ascii' ? 'plain ASCII' : 'blocks'}.`);
  return [sized, signs];
}
