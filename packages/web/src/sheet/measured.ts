/** What waits to be measured; each gives back what is then to be put in its place. */
const waiting: (() => () => void)[] = [];

/**
 * Measures when everything that follows from a change has been written, and puts in its place only when everything has been measured: however many ask, the
 * browser lays the page out once.
 */
export function measured(read: () => () => void): void {
  if (waiting.length === 0) queueMicrotask(() => { for (const put of waiting.splice(0).map((one) => one())) put(); });
  waiting.push(read);
}
