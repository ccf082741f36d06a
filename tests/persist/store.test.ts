import { memoryStore } from '../../src/persist/index.ts';
import { describeStore } from './contract.ts';
import { newFolder, openWriter } from './places.ts';

describeStore('on the disk', () => openWriter(newFolder()));
describeStore('in memory', () => Promise.resolve(memoryStore()));
