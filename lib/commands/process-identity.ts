import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

/**
 * When the process began, as the system tells it, or undefined if there is none. A process id alone is not enough:
 * after a hard kill the id in a lock may belong to somebody else's process.
 */
export function processIdentity(pid: number): string | undefined {
  if (process.platform === "linux") {
    try {
      const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
      // The name in parentheses may hold spaces; the fields after it may not.
      const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
      return fields[0] === "Z" ? undefined : fields[19];
    } catch {
      return undefined;
    }
  }
  const told = spawnSync("ps", ["-o", "lstart=", "-p", String(pid)], { encoding: "utf8" });
  return told.status === 0 ? told.stdout.trim() || undefined : undefined;
}

/** The command line of a process, or "" if there is none or it may not be seen. */
export function processCommand(pid: number): string {
  if (process.platform === "linux") {
    try {
      return readFileSync(`/proc/${pid}/cmdline`, "utf8").replaceAll("\0", " ");
    } catch {
      return "";
    }
  }
  return spawnSync("ps", ["-o", "command=", "-p", String(pid)], { encoding: "utf8" }).stdout ?? "";
}
