import { mkdirSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { memoryFolder } from "@/lib/commands/postgres/memory-folder";
import { temporaryFolder } from "../support/temporary-folder";

const temporary = temporaryFolder();

const memory = path.join(temporary, "memory");
mkdirSync(memory, { recursive: true });

describe("a folder in memory", () => {
  it("has a place of its own for each folder it stands for", () => {
    const [one, other] = ["/a/postgres", "/b/postgres"].map((folder) => memoryFolder(folder, memory, 0));
    expect(path.relative(memory, one as string)).toMatch(/^emfolio-postgres-[0-9a-f]{8}$/);
    expect(other).not.toBe(one);
  });

  it("stays in use where it is, however little room is left", () => {
    const there = memoryFolder("/a/postgres", memory, 0);
    expect(memoryFolder("/a/postgres", memory, Number.POSITIVE_INFINITY)).toBe("/a/postgres");
    mkdirSync(there);
    expect(memoryFolder("/a/postgres", memory, Number.POSITIVE_INFINITY)).toBe(there);
  });

  it("is the folder itself where there is no such memory", () => {
    expect(memoryFolder("/a/postgres", path.join(memory, "nowhere"), 1)).toBe("/a/postgres");
  });
});
