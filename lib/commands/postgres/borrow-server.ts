import { randomBytes } from "node:crypto";
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { stateFolder } from "@/lib/commands/checkout";
import { withLock } from "@/lib/commands/lock";
import { findBinaries } from "@/lib/commands/postgres/binaries";
import { type Home, openHome, systemFolder } from "@/lib/commands/postgres/home";
import { memoryFolder } from "@/lib/commands/postgres/memory-folder";
import { runningPostmaster, stopPostmaster } from "@/lib/commands/postgres/postmaster";
import { boot, urlOf } from "@/lib/commands/postgres/server";
import { processIdentity } from "@/lib/commands/process-identity";

export type BorrowedServer = {
  readonly urlOf: (database: string) => string;
  /** This call started it, so nothing in it is in use by anyone else. */
  readonly fresh: boolean;
  readonly giveBack: () => Promise<void>;
};

// What is lost in a crash is made again; what a test waits for is not.
const settings = {
  ...{ fsync: "off", synchronous_commit: "off", full_page_writes: "off", max_wal_size: "256MB" },
  max_connections: "200",
};

/** The server of the tests: the first who asks starts it, several may use it at once, the last one stops it. */
export async function borrowServer(log: (line: string) => void = () => {}): Promise<BorrowedServer> {
  const home = openHome(memoryFolder(path.join(stateFolder, "test-postgres")), false, log);
  const lock = path.join(home.folder, "lock");
  // One process may borrow it twice, and gives it back twice.
  const borrower = `${process.pid} ${processIdentity(process.pid)} ${randomBytes(4).toString("hex")}`;
  const entry = path.join(borrowersFolder(home), borrower);
  return withLock(lock, async () => {
    const running = livingBorrowers(home).length > 0 ? runningPostmaster(home) : undefined;
    const port = running?.port ?? (await boot(home, settings, log)).port;
    mkdirSync(borrowersFolder(home), { recursive: true });
    writeFileSync(entry, "");
    const giveBack = () =>
      withLock(lock, async () => {
        rmSync(entry, { force: true });
        if (livingBorrowers(home).length === 0)
          stopPostmaster(home, findBinaries(home.account, systemFolder, log));
      });
    return {
      urlOf: (database: string) => urlOf(home, port, database),
      fresh: running === undefined,
      giveBack,
    };
  });
}

function borrowersFolder(home: Home): string {
  return path.join(home.folder, "borrowers");
}

function livingBorrowers(home: Home): readonly string[] {
  let names: readonly string[];
  try {
    names = readdirSync(borrowersFolder(home));
  } catch {
    return [];
  }
  return names.filter((name) => {
    const [pid, identity] = name.split(" ");
    if (processIdentity(Number(pid)) === identity) return true;
    rmSync(path.join(borrowersFolder(home), name), { force: true });
    return false;
  });
}
