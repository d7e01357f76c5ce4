import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { Failure } from "@/lib/commands/failure";

/** The user a server process runs as; empty when it runs as the person who started it. */
export type Account = { readonly uid?: number; readonly gid?: number };

/**
 * PostgreSQL refuses to run as root. Started by root, it runs as the owner of its data, or for new data as the
 * system's `postgres` user, or as `nobody`, which every system has.
 */
export function serverAccount(data: string): Account {
  if (process.getuid?.() !== 0) return {};
  if (existsSync(data)) {
    const { uid, gid } = statSync(data);
    if (uid !== 0) return { uid, gid };
  }
  for (const name of ["postgres", "nobody"]) {
    const uid = Number(spawnSync("id", ["-u", name], { encoding: "utf8" }).stdout || "NaN");
    const gid = Number(spawnSync("id", ["-g", name], { encoding: "utf8" }).stdout || "NaN");
    if (uid > 0 && Number.isInteger(gid)) return { uid, gid };
  }
  throw new Failure(
    "PostgreSQL cannot run as root, and this system has neither a user postgres nor a user nobody: start as another user.",
  );
}

/** Whether the account can come into the folder and write there (permissions of the folders above included). */
export function canUse(account: Account, folder: string): boolean {
  return ["-x", "-w"].every(
    (flag) => spawnSync("test", [flag, folder], { ...account, cwd: "/" }).status === 0,
  );
}

/** What a server process needs of the environment, and nothing of what else is in it. */
export const serverEnvironment = {
  PATH: process.env.PATH,
  LC_ALL: "C",
  TZ: "UTC",
} as unknown as NodeJS.ProcessEnv;
