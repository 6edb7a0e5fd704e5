/** Dark or light as the reader has it: set before the bare page is painted, so a classic script. */
(() => {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const show = () => (document.documentElement.dataset.mdColorScheme = dark.matches ? "slate" : "default");
  dark.addEventListener("change", show);
  show();
})();
