import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { ReadyDatabase } from "@/lib/commands/start/prepare-database";
import { ensureSealKeys, keyFolderOf } from "@/lib/commands/start/seal-keys";
import { readSettings } from "@/lib/commands/start/settings";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { makeKey } from "@/lib/documents/seal/make-key";
import { readKey } from "@/lib/documents/seal/read-key";
import { buildWorld } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { temporaryFolder } from "../support/temporary-folder";

const folder = temporaryFolder();
const secret = "of no installation ".repeat(2);
const settingsOf = (environment: Readonly<Record<string, string>>) =>
  readSettings({ NODE_ENV: "production", ...environment }, []);

let database: TestDatabase;
let ready: ReadyDatabase;
beforeAll(async () => {
  database = await testDatabase();
  const { adminUrl, runtimeUrl, jobsUrl } = database;
  const rest = { kind: "given", isRunning: () => true, stop: () => {} } as const;
  ready = { ...rest, adminUrl, runtimeUrl, jobsUrl, folder };
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const started = async (environment: Readonly<Record<string, string>> = {}): Promise<string[]> => {
  const told: string[] = [];
  const keys = keyFolderOf(settingsOf(environment), folder, secret);
  await ensureSealKeys(ready, keys, (line) => told.push(line));
  return told;
};

it("makes no key for a laboratory without a name, then one of its own, and tells its fingerprint", async () => {
  expect(await started()).toEqual([]);
  configureDatabase(database.runtimeUrl);
  await buildWorld();
  const [first] = await started();
  expect(first).toMatch(/^Certificates are sealed with ECDSA P-256, self-issued, fingerprint [0-9a-f]{64}$/);
  expect(await started()).toEqual([first]);
  // Locked by something derived from the installation's secret, which does not open it by itself.
  const file = readFileSync(path.join(folder, "keys", "seal-key.p12"));
  await expect(readKey(file, secret)).rejects.toThrow("passphrase");
});

it("takes up the site's file, and says in one line what is wrong with one", async () => {
  const file = path.join(folder, "site.p12");
  const given = { SEAL_KEY_FILE: file, SEAL_KEY_PASSPHRASE: "theirs" };
  await expect(started(given)).rejects.toThrow(
    /^The file of the seal's key cannot be read \(SEAL_KEY_FILE\)/,
  );
  writeFileSync(file, await makeKey({ purpose: "seal", name: "L", at: new Date(), passphrase: "theirs" }));
  expect(await started(given)).toEqual([expect.stringContaining("from SEAL_KEY_FILE")]);
  await expect(started({ ...given, SEAL_KEY_PASSPHRASE: "other" })).rejects.toThrow("SEAL_KEY_PASSPHRASE");
});

it("knows an address of a timestamp authority when it sees one", () => {
  expect(() => settingsOf({ TIMESTAMP_URL: "timestamp.example" })).toThrow(
    "TIMESTAMP_URL must be an address",
  );
  expect(settingsOf({ TIMESTAMP_URL: "http://timestamp.example/tsr" }).timestampUrl).toContain("/tsr");
  expect(settingsOf({ TIMESTAMP_URL: "" }).timestampUrl).toBeUndefined();
});
