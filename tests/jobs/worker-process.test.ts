import type { ChildProcess } from "node:child_process";
import path from "node:path";
import type pg from "pg";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { becomeSoleWorker } from "@/lib/commands/jobs/sole-worker";
import { startWorkerProcess } from "@/lib/commands/jobs/worker-process";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { smtpCarrier } from "@/lib/jobs/smtp-carrier";
import { type TestDatabase, testDatabase } from "../support/database";
import { type SmtpServer, startSmtpServer } from "../support/smtp-server";
import { ended, printed, spawnNode } from "../support/spawn-node";
import { temporaryFolder } from "../support/temporary-folder";
import { testKeys } from "../support/test-keys";
import { workOff } from "../support/work-off";
import { attemptsOf, jobOf, letter, publicUrl, write } from "./mail-world";

const mailFolder = temporaryFolder();
let database: TestDatabase;
let admin: pg.Client;
let server: SmtpServer;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  server = await startSmtpServer();
});
beforeEach(() => {
  server.hang = false;
});
afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await server?.close();
  await database?.drop();
});

const spawnWorker = (): ChildProcess =>
  spawnNode("lib/commands/jobs/worker.ts", [], {
    DATABASE_URL: database.runtimeUrl,
    JOBS_DATABASE_URL: database.jobsUrl,
    PUBLIC_URL: publicUrl,
    SMTP_URL: server.url,
    SEAL_KEY: "5e".repeat(32),
    SEAL_KEYS: JSON.stringify(testKeys(path.join(mailFolder, "keys"))),
  });

const messageIdOf = (message: string) => /^Message-ID: (.+)$/m.exec(message)?.[1]?.trim();

describe("a worker", () => {
  it("that is killed in the middle of a delivery leaves it to the next, which sends the same message", async () => {
    const id = await write(letter());
    server.hang = true;
    const handedOver = server.next();
    const worker = spawnWorker();
    const first = await handedOver;
    expect(await jobOf(admin, id)).toMatchObject({ attempts: 1 });
    worker.kill("SIGKILL");
    await ended(worker);
    expect(await attemptsOf(admin, id)).toEqual([]);

    server.hang = false;
    const carrier = smtpCarrier(server.url, "laboratory@calibration.example");
    const work = { carrier, publicUrl, clock: () => new Date() };
    // Its connections end with it, and its lock with them: nobody waits for hours.
    // It may have been at another job as well: each worker looks for pending certificates when it starts.
    expect(await workOff(database.jobsUrl, work)).toBeGreaterThanOrEqual(1);
    expect(server.messages.map(messageIdOf)).toEqual([messageIdOf(first), messageIdOf(first)]);
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["sent"]);
    expect(await workOff(database.jobsUrl, work)).toBe(0);
    expect(server.messages).toHaveLength(2);
  });

  it("that was killed at its last attempt has that attempt again", async () => {
    const id = await write(letter());
    await admin.query(
      "UPDATE graphile_worker._private_jobs SET attempts = max_attempts, locked_at = now(), locked_by = 'dead' WHERE key = $1",
      [`mail:${id}`],
    );
    const carrier = smtpCarrier(server.url, "laboratory@calibration.example");
    expect(await workOff(database.jobsUrl, { carrier, publicUrl, clock: () => new Date() })).toBe(1);
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["sent"]);
  });

  it("waits while another works the same database, and goes on when that one ends", async () => {
    const other = await becomeSoleWorker(database.jobsUrl);
    const id = await write(letter());
    const worker = spawnWorker();
    await printed(worker, "Another worker works this database");
    expect(await attemptsOf(admin, id)).toEqual([]);
    const handedOver = server.next();
    await other.release();
    expect(messageIdOf(await handedOver)).toBe(`<${id}@calibration.example>`);
    const end = ended(worker);
    worker.kill("SIGTERM");
    expect(await end).toMatchObject({ code: 0, stderr: "" });
    // Told to stop in the middle of it, it lets the delivery end.
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["sent"]);
    expect(await jobOf(admin, id)).toBeUndefined();
  });

  it("is started again when it ends by itself, and ends with its supervisor", async () => {
    const told: string[] = [];
    const delivered = async () => {
      // What the first process had handed over and not yet noted may come once more: at least once.
      const mail = letter();
      const handedOver = server.next(mail.id);
      await write(mail);
      await handedOver;
    };
    const worker = startWorkerProcess({
      ...{ databaseUrl: database.runtimeUrl, jobsUrl: database.jobsUrl, publicUrl, mailFolder },
      ...{
        sealKey: "5e".repeat(32),
        sealKeys: testKeys(path.join(mailFolder, "keys")),
        smtpUrl: server.url,
        mailFrom: undefined,
        log: (line) => told.push(line),
      },
    });
    await delivered();
    await admin.query(
      "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND usename = $1",
      [new URL(database.jobsUrl).username],
    );
    await delivered();
    expect(told).toContainEqual(
      expect.stringMatching(/^The worker that sends mail ended \(.*\); starting it again in 1 s$/s),
    );
    await worker.stop();
    let waited = false;
    const next = await becomeSoleWorker(database.jobsUrl, () => {
      waited = true;
    });
    await next.release();
    expect(waited).toBe(false);
  });
});
