// The worker that the theme starts for its search on pages in Spanish.
self.language = "es";
importScripts("theme_worker.js");
