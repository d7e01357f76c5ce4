import { readFileSync } from "node:fs";
import { Failure } from "@/lib/commands/failure";
import { ensureGenerated } from "@/lib/commands/generate";
import { openDatabase } from "@/lib/commands/rederive/open-database";
import { KeyList } from "@/lib/domain/seal/key-list";

const whereFrom =
  "Fetch it from /.well-known/seal-keys.json of the laboratory’s own site, and name it with --keys.";

/** The list of keys from a file; without one, of the laboratory whose database is here. */
export async function readKeys(file: string | null, log: (line: string) => void): Promise<KeyList> {
  return file === null ? ownKeys(log) : keysOfFile(file);
}

function keysOfFile(file: string): KeyList {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    throw new Failure(`The list of keys ${file} cannot be read. ${whereFrom}`);
  }
  try {
    return KeyList.parse(JSON.parse(text));
  } catch {
    throw new Failure(`${file} is no list of keys. ${whereFrom}`);
  }
}

async function ownKeys(log: (line: string) => void): Promise<KeyList> {
  await ensureGenerated(() => {});
  const database = await openDatabase(process.env, log).catch((error: unknown) => {
    if (error instanceof Failure)
      throw new Failure(
        `No list of keys was named, and no laboratory is here: ${error.message} ${whereFrom}`,
      );
    throw error;
  });
  // Loaded only now: they need the generated client.
  const { closeDatabase, configureDatabase } = await import("@/lib/data/client");
  const { sealKeysView } = await import("@/lib/views/seal-keys");
  try {
    configureDatabase(database.url);
    return await sealKeysView(new Date());
  } catch {
    // Of another version, or not a laboratory's at all: whose keys are asked for is said, not how the database failed.
    throw new Failure(
      `No list of keys was named, and the database here gives none: its state is another version's. ${whereFrom}`,
    );
  } finally {
    await closeDatabase();
    database.close();
  }
}
