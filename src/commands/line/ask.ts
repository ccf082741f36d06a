/** Asks on the terminal; only a word that begins with y is a yes. */
export async function askOnTerminal(question: string): Promise<boolean> {
  const { createInterface } = await import('node:readline/promises');
  const line = createInterface({ input: process.stdin, output: process.stderr });
  try {
    return /^\s*y/i.test(await line.question(`${question} y n `));
  } finally {
    line.close();
  }
}
