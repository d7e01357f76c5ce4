import { spawn, spawnSync } from "node:child_process";
import { closeSync, existsSync, openSync, readFileSync, rmSync, statSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { Failure } from "@/lib/commands/failure";
import { serverEnvironment } from "@/lib/commands/postgres/account";
import type { Binaries } from "@/lib/commands/postgres/binaries";
import type { Home } from "@/lib/commands/postgres/home";
import { processCommand } from "@/lib/commands/process-identity";

const patience = { startSeconds: 120, stopSeconds: 60 };

/** Starts the server, detached: a Ctrl-C in the terminal must reach the application first. Waits until it answers. */
export async function startPostmaster(
  home: Home,
  binaries: Binaries,
  port: number,
  settings: Readonly<Record<string, string>>,
): Promise<"ready" | "port taken"> {
  const giveUpAt = Date.now() + patience.startSeconds * 1000;
  for (;;) {
    const complaint = await launch(home, binaries, port, settings, giveUpAt);
    if (complaint === undefined) return "ready";
    if (/could not bind|could not create any TCP/.test(complaint)) return "port taken";
    // After a hard kill the last server processes may need a moment to notice.
    if (!/pre-existing shared memory block/.test(complaint) || Date.now() > giveUpAt) {
      throw new Failure(`PostgreSQL did not start: ${lastFatal(complaint)} (log: ${logFile(home)})`);
    }
    await pause(200);
  }
}

/** Resolves to undefined when ready, or to what the server said before it gave up. */
async function launch(
  home: Home,
  binaries: Binaries,
  port: number,
  settings: Readonly<Record<string, string>>,
  giveUpAt: number,
): Promise<string | undefined> {
  const options = {
    ...{ port: String(port), listen_addresses: "127.0.0.1", unix_socket_directories: "" },
    ...{ timezone: "UTC", log_timezone: "UTC", lc_messages: "C", ...settings },
  };
  const from = existsSync(logFile(home)) ? statSync(logFile(home)).size : 0;
  const log = openSync(logFile(home), from > 20_000_000 ? "w" : "a", 0o600);
  const child = spawn(
    binaries.postgres,
    ["-D", home.data, ...Object.entries(options).flatMap(([name, value]) => ["-c", `${name}=${value}`])],
    {
      ...home.account,
      cwd: "/",
      detached: true,
      stdio: ["ignore", log, log],
      env: serverEnvironment,
    },
  );
  closeSync(log);
  child.unref();
  let ended: string | undefined;
  child.on("exit", (code, signal) => (ended = `ended with ${code ?? signal}`));
  child.on("error", (error) => (ended = error.message));
  while (Date.now() < giveUpAt) {
    if (ended !== undefined) return `${ended}\n${readFileSync(logFile(home)).subarray(from).toString()}`;
    if (readPidFile(home)?.pid === child.pid && readPidFile(home)?.status === "ready") return undefined;
    await pause(10);
  }
  stopPostmaster(home, binaries);
  return `it was not ready within ${patience.startSeconds} s`;
}

/** Stops whatever serves this folder, ending its connections. False if nothing did. */
export function stopPostmaster(home: Home, binaries: Binaries): boolean {
  if (runningPostmaster(home) === undefined) return false;
  const args = ["stop", "-D", home.data, "-m", "fast", "-w", "-t", String(patience.stopSeconds), "-s"];
  const stopped = spawnSync(binaries.pgCtl, args, { ...home.account, cwd: "/", encoding: "utf8" });
  if (stopped.status !== 0 && runningPostmaster(home) !== undefined) {
    throw new Failure(`PostgreSQL did not stop: ${stopped.stderr.trim()}`);
  }
  return true;
}

/** A server left behind by a hard kill is stopped; a pid file left behind is removed. Call it holding the lock. */
export function clearLeftovers(home: Home, binaries: Binaries, log: (line: string) => void): void {
  if (runningPostmaster(home) !== undefined) {
    log("Stopping the PostgreSQL that an earlier start left behind");
    stopPostmaster(home, binaries);
  } else if (readPidFile(home) !== undefined) {
    // Its number may belong to any process by now, and PostgreSQL would then refuse to start.
    rmSync(path.join(home.data, "postmaster.pid"), { force: true });
  }
}

/** The server that serves this folder now, if any. */
export function runningPostmaster(home: Home): { readonly pid: number; readonly port: number } | undefined {
  const told = readPidFile(home);
  return told !== undefined && processCommand(told.pid).includes(home.data) ? told : undefined;
}

export function isRunning(home: Home): boolean {
  return runningPostmaster(home) !== undefined;
}

type PidFile = { readonly pid: number; readonly port: number; readonly status: string };

function readPidFile(home: Home): PidFile | undefined {
  try {
    const lines = readFileSync(path.join(home.data, "postmaster.pid"), "utf8").split("\n");
    return { pid: Number(lines[0]), port: Number(lines[3]), status: (lines[7] ?? "").trim() };
  } catch {
    return undefined;
  }
}

export function logFile(home: Home): string {
  return path.join(home.folder, "postgres.log");
}

function lastFatal(text: string): string {
  const lines = text.split("\n").filter((line) => /FATAL|PANIC|ERROR|could not/.test(line));
  return (lines.at(-1) ?? text.split("\n")[0] ?? "").replace(/^.*?(FATAL|PANIC|ERROR): */, "");
}
