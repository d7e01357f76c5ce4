import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { processIdentity } from "@/lib/commands/process-identity";

export type Lock = { readonly kind: "taken"; readonly release: () => void };
type Held = { readonly kind: "held"; readonly pid: number };

/** Takes the lock file unless a living process has it. A lock left by a killed process is taken over. */
export function takeLock(file: string): Lock | Held {
  const mine = `${process.pid} ${processIdentity(process.pid) ?? ""}`;
  mkdirSync(path.dirname(file), { recursive: true });
  for (;;) {
    try {
      writeFileSync(file, mine, { flag: "wx" });
      return { kind: "taken", release: () => releaseLock(file, mine) };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    }
    const holder = read(file);
    if (holder === undefined) continue;
    const [pid, identity] = holder.split(" ");
    if (processIdentity(Number(pid)) === identity && identity !== undefined)
      return { kind: "held", pid: Number(pid) };
    discard(file, holder);
  }
}

/** Runs the work while holding the lock, waiting for its turn; `onWait` is told once whom it waits for. */
export async function withLock<T>(
  file: string,
  work: () => Promise<T>,
  onWait?: (pid: number) => void,
): Promise<T> {
  let told = false;
  for (;;) {
    const lock = takeLock(file);
    if (lock.kind === "taken") {
      try {
        return await work();
      } finally {
        lock.release();
      }
    }
    if (!told) onWait?.(lock.pid);
    told = true;
    await pause(50);
  }
}

function read(file: string): string | undefined {
  try {
    const text = readFileSync(file, "utf8");
    return text === "" ? undefined : text;
  } catch {
    return undefined;
  }
}

function releaseLock(file: string, mine: string): void {
  if (read(file) === mine) rmSync(file, { force: true });
}

/** Moves a dead lock away first, so that of two processes that find it dead only one believes it removed it. */
function discard(file: string, expected: string): void {
  const aside = `${file}.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch {
    return;
  }
  if (read(aside) !== expected) {
    try {
      writeFileSync(file, read(aside) ?? "", { flag: "wx" });
    } catch {
      // Somebody else has taken it in between, which is what a lock is for.
    }
  }
  rmSync(aside, { force: true });
}
