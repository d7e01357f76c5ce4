import { spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { takeLock, withLock } from "@/lib/commands/lock";
import { processIdentity } from "@/lib/commands/process-identity";
import { temporaryFolder } from "../support/temporary-folder";

const temporary = temporaryFolder();
const lockFile = (name: string) => path.join(temporary, name);

it("is had by one at a time", () => {
  const first = takeLock(lockFile("one"));
  expect(first.kind).toBe("taken");
  expect(takeLock(lockFile("one"))).toEqual({ kind: "held", pid: process.pid });
  if (first.kind === "taken") first.release();
  expect(takeLock(lockFile("one")).kind).toBe("taken");
});

it("of a killed process is taken over", async () => {
  const child = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"]);
  await new Promise((resolve) => child.once("spawn", resolve));
  writeFileSync(lockFile("killed"), `${child.pid} ${processIdentity(child.pid ?? 0)}`);
  expect(takeLock(lockFile("killed"))).toEqual({ kind: "held", pid: child.pid });
  child.kill("SIGKILL");
  await new Promise((resolve) => child.once("close", resolve));
  expect(takeLock(lockFile("killed")).kind).toBe("taken");
});

it("of a pid that somebody else has by now is taken over", () => {
  writeFileSync(lockFile("reused"), `${process.pid} another time`);
  expect(takeLock(lockFile("reused")).kind).toBe("taken");
});

it("makes work wait for its turn", async () => {
  let inside = 0;
  let most = 0;
  const work = async () => {
    inside += 1;
    most = Math.max(most, inside);
    await new Promise((resolve) => setImmediate(resolve));
    inside -= 1;
  };
  await Promise.all(Array.from({ length: 5 }, () => withLock(lockFile("turns"), work)));
  expect(most).toBe(1);
});
