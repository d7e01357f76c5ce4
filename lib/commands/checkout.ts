import path from "node:path";
import { fileURLToPath } from "node:url";

/** The folder of this checkout, whatever the current directory is. */
export const checkout = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "..", "..");

/** Where this checkout keeps what it makes for itself (git-ignored): secrets, locks, logs, fingerprints. */
export const stateFolder = path.join(checkout, ".emfolio");

export function inCheckout(...parts: readonly string[]): string {
  return path.join(checkout, ...parts);
}
