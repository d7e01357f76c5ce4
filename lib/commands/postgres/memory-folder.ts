import { createHash } from "node:crypto";
import { existsSync, statfsSync } from "node:fs";
import path from "node:path";

/** Where Linux keeps files in memory. */
const inMemory = "/dev/shm";

/** A whole run of the tests leaves well over half of it free. */
const roomNeeded = 2 * 1024 ** 3;

/**
 * Where to keep, in memory, what may be lost: making and dropping a database of a thousand small files waits for no disk
 * there. The folder itself where memory has no room for files, or where this is not Linux. One that is there stays in use,
 * however full memory has become since, so that all who share it find the same one.
 */
export function memoryFolder(folder: string, memory = inMemory, needed = roomNeeded): string {
  const name = `emfolio-${path.basename(folder)}-${createHash("sha256").update(folder).digest("hex").slice(0, 8)}`;
  const there = path.join(memory, name);
  return existsSync(there) || roomIn(memory) >= needed ? there : folder;
}

function roomIn(memory: string): number {
  try {
    const { bavail, bsize } = statfsSync(memory);
    return bavail * bsize;
  } catch {
    return 0;
  }
}
