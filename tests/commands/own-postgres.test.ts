import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import pg from "pg";
import { afterEach, describe, expect, it } from "vitest";
import { type Server, startServer } from "@/lib/commands/postgres/server";
import { ended, printed, spawnNode } from "../support/spawn-node";
import { temporaryFolder } from "../support/temporary-folder";

const temporary = temporaryFolder();
let running: Server | undefined;

// Only the server's crash is tried here, not the machine's.
const settings = { fsync: "off" };

afterEach(() => {
  running?.stop();
  running = undefined;
});

async function start(folder: string, insisted = true): Promise<Server> {
  running = await startServer({ folder, insisted, settings, log: () => {} });
  return running;
}

function stop(): void {
  running?.stop();
  running = undefined;
}

async function query(url: string, sql: string): Promise<readonly Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  return client
    .query(sql)
    .then(({ rows }) => rows, Promise.reject.bind(Promise))
    .finally(() => client.end());
}

/** A folder with data and one remembered number in it, at rest. Made once; each test has a copy. */
async function atRest(name: string): Promise<string> {
  const original = path.join(temporary, "original");
  if (!existsSync(original)) {
    const server = await start(original);
    await query(server.urlOf("postgres"), "CREATE TABLE kept AS SELECT 42 AS number");
    stop();
  }
  const folder = path.join(temporary, name);
  expect(spawnSync("cp", ["-a", original, folder]).status).toBe(0); // with their owner, whom PostgreSQL insists on
  return folder;
}

const kept = (server: Server) => query(server.urlOf("postgres"), "SELECT number FROM kept");

describe("our own PostgreSQL", () => {
  it("keeps the data from one start to the next, and its port", async () => {
    const folder = await atRest("again");
    const port = readFileSync(path.join(folder, "port"), "utf8");
    const server = await start(folder);
    expect(await kept(server)).toEqual([{ number: 42 }]);
    expect(String(server.port)).toBe(port);
  });

  it("listens on loopback only, and asks for a password", async () => {
    const server = await start(await atRest("loopback"));
    expect(await query(server.urlOf("postgres"), "SHOW listen_addresses")).toEqual([
      { listen_addresses: "127.0.0.1" },
    ]);
    expect(await query(server.urlOf("postgres"), "SHOW unix_socket_directories")).toEqual([
      { unix_socket_directories: "" },
    ]);
    const url = new URL(server.urlOf("postgres"));
    url.password = "guessed";
    await expect(query(url.href, "SELECT 1")).rejects.toThrow(/password authentication failed/);
  });

  it("leaves nothing running and no lock when stopped", async () => {
    const folder = await atRest("stopped");
    await start(folder);
    stop();
    expect(existsSync(path.join(folder, "data", "postmaster.pid"))).toBe(false);
    expect(existsSync(path.join(folder, "lock"))).toBe(false);
  });

  it("takes another port when somebody else has taken its own", async () => {
    const folder = await atRest("moved");
    const other = await startServer({ folder: await atRest("other"), insisted: true, log: () => {} });
    try {
      writeFileSync(path.join(folder, "port"), String(other.port));
      const server = await start(folder);
      expect(server.port).not.toBe(other.port);
      expect(await kept(server)).toEqual([{ number: 42 }]);
    } finally {
      other.stop();
    }
  });
});

describe("after a hard kill", () => {
  it("stops the server that was left behind, and keeps the data", async () => {
    const folder = await atRest("orphan");
    const child = spawnNode("tests/support/hold-server.ts", [folder]);
    await printed(child, "ready");
    child.kill("SIGKILL");
    await ended(child);
    expect(existsSync(path.join(folder, "data", "postmaster.pid"))).toBe(true);
    expect(await kept(await start(folder))).toEqual([{ number: 42 }]);
  });

  it("recovers when the server was killed too", async () => {
    const folder = await atRest("crash");
    const child = spawnNode("tests/support/hold-server.ts", [folder]);
    await printed(child, "ready");
    const postmaster = Number(
      readFileSync(path.join(folder, "data", "postmaster.pid"), "utf8").split("\n")[0],
    );
    child.kill("SIGKILL");
    process.kill(postmaster, "SIGKILL");
    await ended(child);
    expect(await kept(await start(folder))).toEqual([{ number: 42 }]);
  });

  it("is not misled by a pid that belongs to somebody else by now", async () => {
    const folder = await atRest("reused");
    writeFileSync(
      path.join(folder, "data", "postmaster.pid"),
      `${process.pid}\n${folder}/data\n1\n1\n\n\n\nready\n`,
    );
    writeFileSync(path.join(folder, "lock"), `${process.pid} 1`);
    expect(await kept(await start(folder))).toEqual([{ number: 42 }]);
  });

  it("clears away a data folder that was only being made", async () => {
    const folder = await atRest("making");
    rmSync(path.join(folder, "data"), { recursive: true });
    mkdirSync(path.join(folder, "data.making-1", "base"), { recursive: true });
    await start(folder);
    expect(existsSync(path.join(folder, "data.making-1"))).toBe(false);
  });
});

describe("refuses, in one line,", () => {
  const line = (text: RegExp) =>
    expect.objectContaining({ name: "Failure", message: expect.stringMatching(text) });

  it("a folder that is not ours, and leaves it as it is", async () => {
    const folder = path.join(temporary, "foreign");
    mkdirSync(folder);
    writeFileSync(path.join(folder, "thesis.txt"), "irreplaceable");
    await expect(start(folder)).rejects.toEqual(
      line(/^.*foreign is not empty and not ours: move it away[^\n]*$/),
    );
    expect(readFileSync(path.join(folder, "thesis.txt"), "utf8")).toBe("irreplaceable");
  });

  it("a half-made folder", async () => {
    const folder = await atRest("half");
    rmSync(path.join(folder, "data", "global", "pg_control"));
    await expect(start(folder)).rejects.toEqual(
      line(/^.*half is incomplete \(pg_control is missing\)[^\n]*$/),
    );
  });

  it("data of another major version", async () => {
    const folder = await atRest("older");
    writeFileSync(path.join(folder, "data", "PG_VERSION"), "15\n");
    await expect(start(folder)).rejects.toEqual(
      line(/^.*was made by PostgreSQL 15, and this is PostgreSQL 18[^\n]*$/),
    );
  });

  it("a folder that a living process uses", async () => {
    const folder = await atRest("used");
    await start(folder);
    await expect(startServer({ folder, insisted: true, log: () => {} })).rejects.toEqual(
      line(/^.*used is in use by process \d+: stop that first\.$/),
    );
  });

  it("a place where no folder can be made", async () => {
    writeFileSync(path.join(temporary, "file"), "");
    await expect(start(path.join(temporary, "file", "data"))).rejects.toEqual(
      line(/^The data folder .* cannot be used: [^\n]*$/),
    );
  });
});

// Only root has to hand the server to another user.
describe.runIf(process.getuid?.() === 0)("started by root below a folder that others cannot enter", () => {
  const closed = path.join(temporary, "closed");

  it("refuses a place the person insisted on", async () => {
    mkdirSync(closed);
    chmodSync(closed, 0o700);
    await expect(start(path.join(closed, "insisted"))).rejects.toThrow(/name a folder that others can enter/);
  });

  it("keeps its data where the server's user can enter, says so, and finds them again", async () => {
    const told: string[] = [];
    const folder = path.join(closed, "checkout", "postgres");
    const open = () => startServer({ folder, insisted: false, log: (text) => told.push(text) });
    running = await open();
    const elsewhere = running.home.folder;
    try {
      expect(told[0]).toBe(
        `Started by root, PostgreSQL runs as another user, who cannot enter ${folder}; its data are in ${elsewhere}`,
      );
      await query(running.urlOf("postgres"), "CREATE TABLE kept AS SELECT 42 AS number");
      stop();
      running = await open();
      expect(await kept(running)).toEqual([{ number: 42 }]);
    } finally {
      stop();
      rmSync(elsewhere, { recursive: true });
    }
  });
});
