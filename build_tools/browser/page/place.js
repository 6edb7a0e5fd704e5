/**
 * Where the site is, as the address of these scripts tells. All scripts of pages are joined into
 * files of one folder, this module among them; a module in a folder below would not know that.
 */
export const SITE = new URL("../../../", import.meta.url);
