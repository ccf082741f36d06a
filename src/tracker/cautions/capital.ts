/** Words as the beginning of a sentence. */
export const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);
