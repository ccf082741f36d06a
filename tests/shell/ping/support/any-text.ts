import fc from 'fast-check';

const troublesome = [
  '\u001b',
  '\u0007',
  '\u009b',
  '\u202e',
  '\u2028',
  '\n',
  '\t',
  '"',
  '\\',
  '\ud800',
  '🪑',
].map((text) => text.charCodeAt(0));

/** Any text, broken characters among it, rich in what makes trouble. */
export const anyText = (longest: number): fc.Arbitrary<string> =>
  fc
    .array(
      fc.oneof(
        fc.integer({ min: 0, max: 0xffff }),
        fc.constantFrom(...troublesome),
        fc.integer({ min: 0x20, max: 0x7e }),
      ),
      {
        maxLength: longest,
      },
    )
    .map((units) => String.fromCharCode(...units));
