// The worker that the theme starts for its search. The theme starts no module; what it asks before
// the module is there waits for it.
const search = import("./worker.js");
addEventListener("message", async ({ data }) => postMessage(await (await search).answer(data)));
