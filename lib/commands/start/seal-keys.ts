import { hkdfSync } from "node:crypto";
import path from "node:path";
import { Failure } from "@/lib/commands/failure";
import type { ReadyDatabase } from "@/lib/commands/start/prepare-database";
import type { Settings } from "@/lib/commands/start/settings";
import type { KeyFolder } from "@/lib/documents/seal/key-folder";

/** HKDF-SHA256 (RFC 5869) of the installation's secret: whoever learns it does not learn the secret. */
const passphraseOf = (installationSecret: string): string =>
  Buffer.from(hkdfSync("sha256", installationSecret, "", "emfolio seal key files", 32)).toString("hex");

/** Where this installation's keys of the seal lie, and how they are opened. */
export function keyFolderOf(settings: Settings, folder: string, secret: string): KeyFolder {
  const { sealKeyFile: file, sealKeyPassphrase: passphrase, timestampUrl } = settings;
  return {
    folder: path.resolve(folder, "keys"),
    passphrase: passphraseOf(secret),
    given: file === undefined ? undefined : { file: path.resolve(file), passphrase: passphrase ?? "" },
    timestampUrl,
  };
}

/** Makes and lists the keys that seal, where the laboratory has a name to put into them; says which they are. */
export async function ensureSealKeys(
  database: ReadyDatabase,
  keys: KeyFolder,
  log: (line: string) => void,
): Promise<void> {
  // Loaded only when needed: they bring the whole product with them.
  const [{ closeDatabase, configureDatabase }, { installationKeys }, { KeyFileRefused }] = await Promise.all([
    import("@/lib/data/client"),
    import("@/lib/operations/seal/sealer"),
    import("@/lib/documents/seal/key-file"),
  ]);
  configureDatabase(database.runtimeUrl);
  try {
    const seal = await installationKeys(keys, () => new Date());
    if (seal === null) return;
    const { facts } = seal.material;
    const whose = seal.origin === "self-issued" ? "self-issued" : "from SEAL_KEY_FILE";
    log(`Certificates are sealed with ${facts.algorithm}, ${whose}, fingerprint ${facts.fingerprint}`);
  } catch (error) {
    if (error instanceof KeyFileRefused) throw new Failure(error.message);
    throw error;
  } finally {
    await closeDatabase();
  }
}
