import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { chownSync, existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { Failure } from "@/lib/commands/failure";
import { serverEnvironment } from "@/lib/commands/postgres/account";
import type { Binaries } from "@/lib/commands/postgres/binaries";
import type { Home } from "@/lib/commands/postgres/home";

export const administrator = "emfolio_admin";

const unfinished = "data.making-";

/** Makes the data folder beside its final place and renames it only when complete, so that a kill leaves no half. */
export function initialise(home: Home, binaries: Binaries, log: (line: string) => void): void {
  for (const name of readdirSync(home.folder)) {
    if (name.startsWith(unfinished)) rmSync(path.join(home.folder, name), { recursive: true, force: true });
  }
  if (existsSync(home.data)) return;
  log("Making a new PostgreSQL data folder");
  const making = path.join(home.folder, `${unfinished}${process.pid}`);
  const password = randomBytes(24).toString("hex");
  const passwordForInitdb = path.join(home.folder, `${unfinished}password`);
  writeFileSync(passwordForInitdb, password, { mode: 0o600 });
  if (home.account.uid !== undefined) chownSync(passwordForInitdb, home.account.uid, home.account.gid ?? 0);
  const made = spawnSync(
    binaries.initdb,
    [
      ["-D", making, "-U", administrator, `--pwfile=${passwordForInitdb}`, "--auth=scram-sha-256"],
      [
        "-E",
        "UTF8",
        "--locale-provider=builtin",
        "--builtin-locale=C.UTF-8",
        "--locale=C",
        "--no-instructions",
      ],
    ].flat(),
    { ...home.account, cwd: "/", encoding: "utf8", env: serverEnvironment },
  );
  rmSync(passwordForInitdb, { force: true });
  if (made.status !== 0) {
    rmSync(making, { recursive: true, force: true });
    throw new Failure(`The data folder ${home.data} could not be made: ${reason(made)}`);
  }
  writeFileSync(passwordFile(home), password, { mode: 0o600 });
  renameSync(making, home.data);
}

export function passwordFile(home: Home): string {
  return path.join(home.folder, "password");
}

/** Refuses data that this PostgreSQL cannot serve, before it is asked to. */
export function checkData(home: Home, major: string): void {
  let made: string;
  try {
    made = readFileSync(path.join(home.data, "PG_VERSION"), "utf8").trim();
    readFileSync(path.join(home.data, "global", "pg_control"));
    readFileSync(passwordFile(home));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EACCES") {
      throw new Failure(
        `The data folder ${home.data} belongs to another user: start as the user who made it.`,
      );
    }
    throw new Failure(
      `The data folder ${home.folder} is incomplete (${path.basename((error as NodeJS.ErrnoException).path ?? "")} is missing): restore it from a backup, or move it away to begin anew.`,
    );
  }
  if (made !== major) {
    throw new Failure(
      `The data folder ${home.data} was made by PostgreSQL ${made}, and this is PostgreSQL ${major}: start the version that made it, or move the folder away to begin anew.`,
    );
  }
}

function reason(made: { readonly error?: Error; readonly stderr: string | null }): string {
  const lines = (made.stderr ?? "").trim().split("\n");
  const line = lines.find((candidate) => /error|FATAL|could not/i.test(candidate)) ?? lines[0] ?? "";
  return made.error?.message ?? line.replace(/^initdb: (error: )?/, "");
}
