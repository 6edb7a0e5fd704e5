/** Whether the reader has asked for fewer bytes: then Python comes when something is touched. */
export function savesData() {
  const { connection } = /** @type {any} */ (navigator);
  return Boolean(connection?.saveData) || matchMedia("(prefers-reduced-data: reduce)").matches;
}
