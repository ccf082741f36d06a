/**
 * What is said when the program itself is at fault: what it was, that nothing recorded is lost, and where it broke for
 * whoever mends it. Node's own words would begin with a screenful of the program's text.
 */
export function brokeDownWords(thrown: unknown): string {
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  const where =
    thrown instanceof Error
      ? (thrown.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line))
      : [];
  return [
    `recoat broke down, by a mistake of its own: ${what}`,
    'What was recorded is kept. Start it again; if it comes back: recoat checkup',
    ...where.slice(0, mostPlaces),
  ].join('\n');
}

const mostPlaces = 5;

/** Calls with whatever breaks, be it thrown or a promise nobody waits for. @returns stops listening */
export function onBreakdown(broke: (thrown: unknown) => void): () => void {
  process.on('uncaughtException', broke);
  return () => process.off('uncaughtException', broke);
}
