import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import { link, mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { KeyFileRefused } from "./key-file";
import type { SealKeyMaterial } from "./key-material";
import { makeKey } from "./make-key";
import { readKey } from "./read-key";

/** Where the keys of this installation lie: outside the database, for the process that seals alone. */
export type KeyFolder = {
  /** For keys of the laboratory's own making. */
  readonly folder: string;
  /** That locks them: derived from the installation's secret. */
  readonly passphrase: string;
  /** The site's own PKCS #12 file for the seal, if it has one. */
  readonly given: { readonly file: string; readonly passphrase: string } | undefined;
  /** An RFC 3161 authority; without one, the laboratory's own. */
  readonly timestampUrl: string | undefined;
};

export type OpenedKey = {
  readonly material: SealKeyMaterial;
  readonly origin: "file" | "self-issued";
};

type Wanted = {
  readonly purpose: "seal" | "timestamp";
  /** The laboratory, for the name of a key that has to be made. */
  readonly name: string;
  readonly now: Date;
  /** Whether a key of the laboratory's own may still be used; one that may not is put aside for another. */
  readonly mayUse: (material: SealKeyMaterial) => boolean;
};

/** The key of the site's file, as it is; or the laboratory's own, made where there is none that may be used. */
export const openKey = async (keys: KeyFolder, wanted: Wanted): Promise<OpenedKey> => {
  if (keys.given !== undefined && wanted.purpose === "seal")
    return { material: await openGiven(keys.given), origin: "file" };
  return { material: await openOwn(keys, wanted), origin: "self-issued" };
};

async function openGiven(given: {
  readonly file: string;
  readonly passphrase: string;
}): Promise<SealKeyMaterial> {
  try {
    return await openOnce(given.file, given.passphrase);
  } catch (error) {
    if (error instanceof KeyFileRefused) throw error;
    throw new KeyFileRefused(`The file of the seal's key cannot be read (SEAL_KEY_FILE): ${given.file}`);
  }
}

const opened = new Map<string, { readonly stamp: string; readonly material: SealKeyMaterial }>();

/** A file that is as it was the last time is not unlocked again, which takes longer than to seal by it. */
async function openOnce(file: string, passphrase: string): Promise<SealKeyMaterial> {
  const { ino, size, mtimeMs } = await stat(file);
  const stamp = `${ino} ${size} ${mtimeMs} ${passphrase}`;
  const known = opened.get(file);
  if (known?.stamp === stamp) return known.material;
  const material = await readKey(await readFile(file), passphrase);
  opened.set(file, { stamp, material });
  return material;
}

async function openOwn({ folder, passphrase }: KeyFolder, wanted: Wanted): Promise<SealKeyMaterial> {
  const file = path.join(folder, `${wanted.purpose}-key.p12`);
  if (existsSync(file)) {
    const material = await readOwn(file, passphrase);
    if (wanted.mayUse(material)) return material;
    // Kept: it may be asked for, and nothing is lost by it.
    await rename(
      file,
      path.join(folder, `${wanted.purpose}-key-${material.facts.fingerprint.slice(0, 16)}.p12`),
    );
  }
  const { purpose, name, now: at } = wanted;
  await writeOnce(file, await makeKey({ purpose, name, at, passphrase }));
  return readOwn(file, passphrase);
}

async function readOwn(file: string, passphrase: string): Promise<SealKeyMaterial> {
  try {
    return await openOnce(file, passphrase);
  } catch (error) {
    if (!(error instanceof KeyFileRefused)) throw error;
    throw new KeyFileRefused(
      `The laboratory's own key ${file} does not open with this installation's secret (AUTH_SECRET, or the file auth-secret): give it the secret it was made with, or move the file away and start again, and revoke that key.`,
    );
  }
}

/** Whole or not at all, readable by its owner only; where another process was first, its key stays. */
async function writeOnce(file: string, bytes: Uint8Array): Promise<void> {
  await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
  // Not by the process alone: two documents may be sealed in one at a time.
  const draft = `${file}.${randomUUID()}.new`;
  await writeFile(draft, bytes, { mode: 0o600 });
  try {
    await link(draft, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  } finally {
    await rm(draft);
  }
}
