import { randomUUID } from 'node:crypto';

/** Makes the id of one key press; all its facts are named after it. */
export type NewId = () => string;

/** Short, and never the same on two machines: the first half of a random UUID. */
export const newId: NewId = () => randomUUID().replaceAll('-', '').slice(0, 16);
