import { readFile } from "node:fs/promises";
import { join } from "node:path";

/** Made with the pages, and kept beside them. */
export const keptScriptFile = (root: string): string => join(root, ".next", "offline-check.js");

/** The script of the offline check; null where the pages were not built, as while they are being edited. */
export const keptScript = (): Promise<string | null> =>
  readFile(keptScriptFile(process.cwd()), "utf8").catch(() => null);
