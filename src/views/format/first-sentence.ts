/** A text up to its first full stop, with it; the whole where there is none. */
export const firstSentence = (text: string): string => /^.*?\.(?= |$)/.exec(text)?.[0] ?? text;
