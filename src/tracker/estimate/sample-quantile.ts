/**
 * The value below which a share `p` (0..1) of a sample lies: type 7 of Hyndman and Fan, Sample quantiles in statistical
 * packages, The American Statistician 50 (1996) 361-365, which is also what R and NumPy take when nothing else is said.
 * Between two values it goes in a straight line. Null for an empty sample; what is no number is left out.
 */
export function sampleQuantile(sample: readonly number[], p: number): number | null {
  return sortedQuantile(
    sample.filter((value) => !Number.isNaN(value)).sort((a, b) => a - b),
    p,
  );
}

/** The same of a sample that is in order and holds numbers only. */
export function sortedQuantile(sorted: readonly number[], p: number): number | null {
  const place = Math.min(1, Math.max(0, p)) * (sorted.length - 1);
  const below = sorted[Math.floor(place)];
  const above = sorted[Math.ceil(place)];
  if (below === undefined || above === undefined) return null;
  return below === above ? below : below + (above - below) * (place - Math.floor(place));
}
