import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

/**
 * When the process began, as the system tells it, or undefined if there is none. A process id alone is not enough:
 * after a hard kill the id in a lock may belong to somebody else's process.
 */
export function processIdentity(pid: number): string | undefined {
  if (process.platform !== "linux") return ps(pid, "lstart=");
  const fields = statFields(pid);
  return fields[0] === "Z" ? undefined : fields[19];
}

export function parentOf(pid: number): number | undefined {
  const told = process.platform === "linux" ? statFields(pid)[1] : ps(pid, "ppid=");
  return told === undefined ? undefined : Number(told);
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
  return ps(pid, "command=") ?? "";
}

/** The fields of /proc/<pid>/stat from the state on; none if there is no such process. */
function statFields(pid: number): readonly string[] {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // The name in parentheses may hold spaces; the fields after it may not.
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ");
  } catch {
    return [];
  }
}

function ps(pid: number, column: string): string | undefined {
  const told = spawnSync("ps", ["-o", column, "-p", String(pid)], { encoding: "utf8" });
  return told.status === 0 ? told.stdout.trim() || undefined : undefined;
}
