import { chmodSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll } from "vitest";

/** A folder that goes when the test file is done, and that a server run by another user can enter. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), "emfolio-test-"));
  chmodSync(folder, 0o755);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
