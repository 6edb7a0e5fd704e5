/**
 * Measures what the page's address says, and tells the host. So a browser that nobody steers can
 * be measured: one that is steered is slower, as somebody looks into its workers.
 */
const MILLISECONDS_FOR_THE_BROWSER_ITSELF = 1500;

if (location.hash) {
  const { withServiceWorker, ...given } = JSON.parse(decodeURIComponent(location.hash.slice(1)));
  try {
    if (withServiceWorker) {
      await globalThis.takeServiceWorker();
    }
    await new Promise((resolve) => setTimeout(resolve, MILLISECONDS_FOR_THE_BROWSER_ITSELF));
    await tell({ type: "begins" });
    await tell({ type: "measured", ...(await globalThis.firstAnswer(given)) });
  } catch (problem) {
    await tell({ type: "failed", reason: String(problem) });
  }
}

/** @param {object} message */
function tell(message) {
  return fetch("/", { method: "POST", body: JSON.stringify(message) });
}
