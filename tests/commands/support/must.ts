/** What must be there for the test to go on. */
export function must<T>(value: T | null | undefined): T {
  if (value === null || value === undefined)
    throw new Error('what the test looks for is not there');
  return value;
}
