/** Every reason a survivor of sabotage has names numbers that are there, and the page of the last whole run says how many there are now. */
export async function sabotageReasons() {
  const { stale } = await import('../sabotage/explain.mjs');
  const { miscounted } = await import('../sabotage/report.mjs');
  return [
    { name: 'every reason for a survivor of sabotage names a number of data/', problems: stale().map((one) => `tools/sabotage/explained.json: ${one.file} ${one.place ?? ''} ${(one.grade ?? []).join(' ')} fits no number`) },
    { name: 'the page of sabotage counts the numbers of data/', problems: miscounted() },
  ];
}
