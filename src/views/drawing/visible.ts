/**
 * Characters that would act on the terminal or on the order of its text: controls, soft hyphen, zero-width space,
 * line and paragraph separators, direction marks, the byte order mark, halves of a surrogate pair. Joiners stay: emoji and several scripts need them.
 */
const acting =
  // eslint-disable-next-line no-control-regex -- the point is to find them
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\p{Surrogate}]/gu;

const printableAscii = /^[\x20-\x7e]*$/;

/** Text as it may be sent to a terminal: what acts is written out as an escape, `\x1b` or `\u202e`. */
export const visible = (text: string): string =>
  printableAscii.test(text)
    ? text
    : text.replace(acting, (character) => writtenOut(character.codePointAt(0) ?? 0));

const writtenOut = (code: number): string =>
  code < 0x100
    ? `\\x${code.toString(16).padStart(2, '0')}`
    : `\\u${code.toString(16).padStart(4, '0')}`;
