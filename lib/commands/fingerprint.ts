import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";

/**
 * SHA-256 over the names and contents of files and folders, in a fixed order. `skip` names files and folders to leave
 * out wherever they stand. What does not exist counts as absent, so that adding it later changes the fingerprint.
 */
export function fingerprint(root: string, entries: readonly string[], skip: readonly string[] = []): string {
  const hash = createHash("sha256");
  const take = (relative: string): void => {
    const full = path.join(root, relative);
    if (!existsSync(full)) return;
    if (statSync(full).isDirectory()) {
      for (const name of readdirSync(full).sort()) if (!skip.includes(name)) take(path.join(relative, name));
      return;
    }
    const bytes = readFileSync(full);
    hash.update(`${relative}\0${bytes.length}\0`).update(bytes);
  };
  for (const entry of entries) take(entry);
  return hash.digest("hex");
}
