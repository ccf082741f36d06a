import { readClimate } from '../../tracker/trade/index.ts';
import { lineOf, segment, type Line } from '../drawing/index.ts';
import { metered, whenInWords } from '../format/index.ts';
import { fieldPage } from '../parts/field-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import type { BenchPort } from '../port.ts';
import { refused, said, type ScreenModule, type Step, type View } from '../screen.ts';
import type { ConditionsState } from '../screens.ts';

/** Temperature and humidity of the shop, as its meter shows them. */
export const conditionsScreen: ScreenModule<ConditionsState> = {
  draw: (state, view) => {
    const { temperature } = view.snapshot.shop;
    const read = readClimate(state.text, temperature);
    const [example, surface] =
      temperature === 'F' ? ['66F 55%', '66F 55% surface 60F'] : ['19C 55%', '19C 55% surface 16C'];
    const hints = read.ok
      ? [metered(read.climate, temperature)]
      : [
          `Temperature and humidity from a meter beside the work: ${example}.`,
          `Where the surface was measured too: ${surface}.`,
        ];
    return fieldPage(
      {
        title: 'conditions',
        above: lastReading(view),
        label: 'now ',
        field: fieldIn(state.text, state),
        hints:
          state.could === undefined
            ? hints
            : [`Which one?  1: ${state.could[0]}  2: ${state.could[1]}`],
        keys:
          state.could === undefined
            ? ['Enter: note it', 'Esc: no reading']
            : ['1 or 2: note that', 'Esc: no reading'],
      },
      view,
    );
  },

  typing: () => true,

  press: (state, press, view, port) => {
    if (press.name === 'escape') return { back: true };
    const meant =
      press.name === '1' ? state.could?.[0] : press.name === '2' ? state.could?.[1] : undefined;
    if (meant !== undefined) return note(meant, state, view, port);
    if (press.name === 'enter') return note(state.text, state, view, port);
    const { could: _, ...written } = state;
    const edited = editField(fieldIn(written.text, written), press);
    return edited === null ? {} : { state: withCursor({ ...written, text: edited.text }, edited) };
  },
};

/** Notes what was written, asks which of two it was, or says what is wrong with it. */
function note(
  text: string,
  state: ConditionsState,
  view: View,
  port: BenchPort,
): Step<ConditionsState> {
  const { temperature } = view.snapshot.shop;
  const read = readClimate(text, temperature);
  if (!read.ok) {
    const asks = read.could === undefined ? state : { ...state, could: read.could };
    return { state: asks, message: refused(`Not noted: ${read.says}`) };
  }
  const reply = port.takeReading(read.climate);
  return reply.ok
    ? { back: true, message: said(`${reply.says}: ${metered(read.climate, temperature)}`) }
    : { message: messageOf(reply) };
}

function lastReading({ now, snapshot }: View): readonly Line[] {
  const last = snapshot.readings.at(-1);
  if (last === undefined) return [lineOf('no reading yet', 'quiet'), lineOf('')];
  const { shop } = snapshot;
  return [
    [
      segment('last  ', 'quiet'),
      segment(metered(last, shop.temperature)),
      segment(`, read ${whenInWords(last.at, now, shop)}`, 'quiet'),
    ],
    lineOf(''),
  ];
}
