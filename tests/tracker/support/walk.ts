import { expect } from 'vitest';
import { stateAt, type Window, type WindowState } from '../../../src/tracker/windows/index.ts';
import { at } from './instants.ts';

/** Walks through a window instant by instant: `{'9:00': 'before', '9:10': 'open'}`. */
export function expectStates(window: Window, states: Readonly<Record<string, WindowState>>): void {
  const walked = Object.fromEntries(
    Object.keys(states).map((clock) => [clock, stateAt(window, at(clock))]),
  );
  expect(walked).toEqual(states);
}
