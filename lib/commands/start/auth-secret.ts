import { randomBytes } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { stateFolder } from "@/lib/commands/checkout";

/** The key of the sign-in sessions: the site's, or one made once for this checkout, readable by its owner only. */
export function authSecret(given: string | undefined): string {
  if (given !== undefined) return given;
  const file = path.join(stateFolder, "auth-secret");
  if (existsSync(file)) return readFileSync(file, "utf8").trim();
  mkdirSync(stateFolder, { recursive: true });
  const made = randomBytes(32).toString("hex");
  writeFileSync(file, made, { mode: 0o600 });
  return made;
}
