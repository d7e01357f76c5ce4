import { createHash } from "node:crypto";
import { chownSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { checkout } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";
import { type Account, canUse, serverAccount } from "@/lib/commands/postgres/account";

/** The folder a server of ours lives in: `data` (PostgreSQL's own), its password, port, log and lock. */
export type Home = { readonly folder: string; readonly data: string; readonly account: Account };

const markerName = "emfolio-postgres";
const markerText = "This folder was made by Emfolio for its own PostgreSQL. Its data are in data/.\n";

/** Folders of every checkout of root's that the database's user cannot enter. */
export const systemFolder = "/var/lib/emfolio";

/** Opens or makes the folder, in a place the server can use. `insisted`: the person named it, so no other will do. */
export function openHome(wanted: string, insisted: boolean, log: (line: string) => void): Home {
  const home = claim(wanted);
  if (home.account.uid === undefined || canUse(home.account, home.folder)) return home;
  const blocked = `Started by root, PostgreSQL runs as another user, who cannot enter ${wanted}`;
  if (existsSync(home.data)) throw new Failure(`${blocked}: let others enter the folders above it again.`);
  rmSync(wanted, { recursive: true, force: true }); // just made, and empty but for the marker
  if (insisted) throw new Failure(`${blocked}: name a folder that others can enter in EMFOLIO_DATA_DIR.`);
  const name = `${path.basename(checkout)}-${createHash("sha256").update(wanted).digest("hex").slice(0, 8)}`;
  const elsewhere = path.join(systemFolder, name);
  log(`${blocked}; its data are in ${elsewhere}`);
  mkdirSync(systemFolder, { recursive: true, mode: 0o755 });
  return claim(elsewhere);
}

function claim(folder: string): Home {
  const data = path.join(folder, "data");
  const marker = path.join(folder, markerName);
  try {
    if (existsSync(folder) && readdirSync(folder).length > 0) {
      if (!existsSync(marker) || readFileSync(marker, "utf8") !== markerText) {
        throw new Failure(
          `${folder} is not empty and not ours: move it away, or name another folder in EMFOLIO_DATA_DIR.`,
        );
      }
      return { folder, data, account: serverAccount(data) };
    }
    const account = serverAccount(data);
    mkdirSync(folder, { recursive: true });
    writeFileSync(marker, markerText);
    if (account.uid !== undefined) chownSync(folder, account.uid, account.gid ?? account.uid);
    return { folder, data, account };
  } catch (error) {
    if (error instanceof Failure) throw error;
    throw new Failure(`The data folder ${folder} cannot be used: ${(error as Error).message}`);
  }
}
