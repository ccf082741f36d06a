import { readClimate } from '../../tracker/trade/index.ts';
import { lineOf, segment, type Line } from '../drawing/index.ts';
import { air, whenInWords } from '../format/index.ts';
import { fieldPage } from '../parts/field-page.ts';
import { messageOf } from '../parts/message-lines.ts';
import { editField } from '../parts/text-field.ts';
import { fieldIn, withCursor } from '../parts/writing.ts';
import { refused, said, type ScreenModule, type View } from '../screen.ts';
import type { ConditionsState } from '../screens.ts';

/** Temperature and humidity of the shop, as its meter shows them. */
export const conditionsScreen: ScreenModule<ConditionsState> = {
  draw: (state, view) => {
    const { temperature } = view.snapshot.shop;
    const read = readClimate(state.text, temperature);
    const example = temperature === 'F' ? '66F 55%' : '19C 55%';
    return fieldPage(
      {
        title: 'conditions',
        above: lastReading(view),
        label: 'now ',
        field: fieldIn(state.text, state),
        hints: [
          read.ok
            ? air(read.climate, temperature)
            : `Temperature and humidity from a meter beside the work: ${example}.`,
        ],
        keys: ['Enter: note it', 'Esc: no reading'],
      },
      view,
    );
  },

  typing: () => true,

  press: (state, press, view, port) => {
    if (press.name === 'escape') return { back: true };
    if (press.name === 'enter') {
      const { temperature } = view.snapshot.shop;
      const read = readClimate(state.text, temperature);
      if (!read.ok) return { message: refused(`Not noted: ${read.says}`) };
      const reply = port.takeReading(read.climate);
      return reply.ok
        ? { back: true, message: said(`${reply.says}: ${air(read.climate, temperature)}`) }
        : { message: messageOf(reply) };
    }
    const edited = editField(fieldIn(state.text, state), press);
    return edited === null ? {} : { state: withCursor({ ...state, text: edited.text }, edited) };
  },
};

function lastReading({ now, snapshot }: View): readonly Line[] {
  const last = snapshot.readings.at(-1);
  if (last === undefined) return [lineOf('no reading yet', 'quiet'), lineOf('')];
  const { shop } = snapshot;
  return [
    [
      segment('last  ', 'quiet'),
      segment(air(last, shop.temperature)),
      segment(`, read ${whenInWords(last.at, now, shop)}`, 'quiet'),
    ],
    lineOf(''),
  ];
}
