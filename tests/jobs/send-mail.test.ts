import { mkdirSync, readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import type pg from "pg";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { insertMail } from "@/lib/data/mail/mail-store";
import { fileCarrier } from "@/lib/jobs/file-carrier";
import { smtpCarrier } from "@/lib/jobs/smtp-carrier";
import type { Carrier } from "@/lib/operations/mail/deliver";
import { type TestDatabase, testDatabase } from "../support/database";
import { type SmtpServer, startSmtpServer } from "../support/smtp-server";
import { temporaryFolder } from "../support/temporary-folder";
import { workOff } from "../support/work-off";
import { attemptsOf, jobOf, letTimePass, letter, publicUrl, write } from "./mail-world";

const from = "laboratory@calibration.example";
const folder = path.join(temporaryFolder(), "mail");
let database: TestDatabase;
let admin: pg.Client;
let server: SmtpServer;
let smtp: Carrier;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  server = await startSmtpServer();
  smtp = smtpCarrier(server.url, from);
});
beforeEach(() => {
  server.refusal = undefined;
});
afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await server?.close();
  await database?.drop();
});

const work = (carrier: Carrier) =>
  workOff(database.jobsUrl, { carrier, publicUrl, clock: () => new Date("2026-03-02T09:00:00Z") });

const headersOf = (message: string): Readonly<Record<string, string>> => {
  const head = message.slice(0, message.indexOf("\r\n\r\n")).replaceAll(/\r\n[ \t]+/g, " ");
  return Object.fromEntries(
    head.split("\r\n").map((line) => [line.slice(0, line.indexOf(":")), line.slice(line.indexOf(":") + 2)]),
  );
};
const bodyOf = (message: string): string => message.slice(message.indexOf("\r\n\r\n") + 4);

const auditOf = async (id: string): Promise<readonly string[]> =>
  (await admin.query("SELECT action FROM audit_event WHERE entity_id = $1 ORDER BY sequence", [id])).rows.map(
    ({ action }) => action,
  );

describe("a message", () => {
  it("is sent when its transaction commits, once, and told by a later row and the audit log", async () => {
    const id = await write(letter({ body: "Zürich: R-S1\n.\nends with a dot\n" }));
    await work(smtp);
    await work(smtp);
    expect(server.messages).toHaveLength(1);
    expect(headersOf(server.messages[0] ?? "")).toMatchObject({
      From: from,
      To: "quinn@example.test",
      Subject: "2 things are due",
      "Message-ID": `<${id}@calibration.example>`,
      "Auto-Submitted": "auto-generated",
    });
    expect(await attemptsOf(admin, id)).toEqual([
      { outcome: "sent", transport: "smtp", detail: "250 accepted as 17" },
    ]);
    expect(await auditOf(id)).toEqual(["mail.sent"]);
    expect(await jobOf(admin, id)).toBeUndefined();
  });

  it("of a transaction that rolls back is never sent", async () => {
    const before = server.messages.length;
    const mail = letter();
    const rolledBack = inScope({ kind: "laboratory" }, async (tx) => {
      await insertMail(tx, mail, publicUrl, new Date());
      throw new Error("decided otherwise");
    });
    await expect(rolledBack).rejects.toThrow("decided otherwise");
    await work(smtp);
    expect(server.messages).toHaveLength(before);
    expect(await jobOf(admin, mail.id)).toBeUndefined();
  });

  it.each([
    ["a recipient that is two", { recipient: "a@example.test, b@example.test" }],
    ["a recipient with a line break", { recipient: "a@example.test\nBcc:b@example.test" }],
    ["a subject with a line break", { subject: "due\r\nBcc: b@example.test" }],
    ["no text", { body: "" }],
  ])("with %s is refused by the database", async (_, changes) => {
    await expect(write(letter(changes))).rejects.toMatchObject({ message: expect.stringMatching(/check/) });
  });
});

describe("a delivery that is refused", () => {
  it("is told with what the server said, comes back, and is sent then", async () => {
    const before = server.messages.length;
    const id = await write(letter());
    server.refusal = "451 4.7.1 try later";
    await work(smtp);
    expect(server.messages).toHaveLength(before);
    const refused = {
      outcome: "failed",
      transport: "smtp",
      detail: expect.stringContaining("451 4.7.1 try later"),
    };
    expect(await attemptsOf(admin, id)).toEqual([refused]);
    expect(await jobOf(admin, id)).toMatchObject({ attempts: 1, waits: true });
    server.refusal = undefined;
    await letTimePass(admin);
    await work(smtp);
    expect(await attemptsOf(admin, id)).toEqual([refused, expect.objectContaining({ outcome: "sent" })]);
    expect(server.messages).toHaveLength(before + 1);
    expect(await auditOf(id)).toEqual(["mail.failed", "mail.sent"]);
  });

  it("is given up after the last attempt, and says so", async () => {
    const id = await write(letter());
    await admin.query("UPDATE graphile_worker._private_jobs SET max_attempts = 2 WHERE key = $1", [
      `mail:${id}`,
    ]);
    server.refusal = "550 5.1.1 no such mailbox";
    await work(smtp);
    await letTimePass(admin);
    await work(smtp);
    await letTimePass(admin);
    await work(smtp);
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["failed", "given-up"]);
  });

  it("says in plain words that no server answers", async () => {
    const id = await write(letter());
    await work(smtpCarrier("smtp://127.0.0.1:1", from));
    const [attempt] = await attemptsOf(admin, id);
    expect(attempt).toMatchObject({ outcome: "failed", detail: expect.stringContaining("ECONNREFUSED") });
    await letTimePass(admin);
    await work(smtp);
    expect(await attemptsOf(admin, id)).toHaveLength(2);
  });
});

describe("a mail server that does not answer", () => {
  it("is left when its time is over, and the message comes back", async () => {
    const id = await write(letter());
    server.hang = true;
    await work(smtpCarrier(`${server.url}?socketTimeout=200`, from));
    server.hang = false;
    expect(await attemptsOf(admin, id)).toEqual([
      { outcome: "failed", transport: "smtp", detail: expect.stringMatching(/timeout/i) },
    ]);
    await letTimePass(admin);
    await work(smtp);
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["failed", "sent"]);
  });
});

describe("a mail server with a password", () => {
  it("is told the password over TLS only, unless its address says otherwise", async () => {
    const [before, withPassword] = [server.messages.length, server.url.replace("//", "//user:secret@")];
    const id = await write(letter());
    await work(smtpCarrier(withPassword, from));
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["failed"]);
    expect(server.commands.filter((line) => line.startsWith("AUTH"))).toEqual([]);
    await letTimePass(admin);
    await work(smtpCarrier(`${withPassword}?requireTLS=false`, from));
    expect(server.commands.filter((line) => line.startsWith("AUTH"))).toHaveLength(1);
    expect(server.messages).toHaveLength(before + 1);
  });
});

describe("without a mail server", () => {
  it("is a file that a mail program opens, whole, for its owner only", async () => {
    const body = `${"Führung ".repeat(20)}\nhttps://calibration.example/standards/1\n`;
    const id = await write(letter({ subject: "Prüfung fällig", body }), new Date("2026-03-02T09:00:00Z"));
    await work(fileCarrier(folder, from));
    const name = `2026-03-02T09-00-00-${id}.eml`;
    expect(readdirSync(folder)).toEqual([name]);
    expect(statSync(path.join(folder, name)).mode & 0o777).toBe(0o600);
    const message = readFileSync(path.join(folder, name), "utf8");
    expect(message.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    const headers = headersOf(message);
    expect(headers).toMatchObject({
      From: from,
      To: "quinn@example.test",
      "Message-ID": `<${id}@calibration.example>`,
      Date: "Mon, 02 Mar 2026 09:00:00 +0000",
      "MIME-Version": "1.0",
      "Content-Type": "text/plain; charset=utf-8",
    });
    const word = /^=\?UTF-8\?([BQ])\?(.+)\?=$/i.exec(headers.Subject ?? "");
    expect(word).not.toBeNull();
    expect(decodeWord(word?.[1] ?? "", word?.[2] ?? "")).toBe("Prüfung fällig");
    expect(headers["Content-Transfer-Encoding"]).toBe("quoted-printable");
    expect(decodeQuoted(bodyOf(message)).replaceAll("\r\n", "\n")).toBe(body);
    expect(await attemptsOf(admin, id)).toEqual([{ outcome: "sent", transport: "file", detail: name }]);
  });

  it("is told as failed when the folder cannot be written, and leaves nothing behind", async () => {
    const blocked = path.join(temporaryFolder(), "blocked");
    const id = await write(letter(), new Date("2026-03-02T09:00:00Z"));
    mkdirSync(path.join(blocked, `2026-03-02T09-00-00-${id}.eml`, "occupied"), { recursive: true });
    await work(fileCarrier(blocked, from));
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["failed"]);
    expect(readdirSync(blocked)).toEqual([`2026-03-02T09-00-00-${id}.eml`]);
    await letTimePass(admin);
    await work(fileCarrier(folder, from));
    expect((await attemptsOf(admin, id)).map(({ outcome }) => outcome)).toEqual(["failed", "sent"]);
  });
});

const bytes = (text: string): string =>
  Buffer.from(
    text.replaceAll(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))),
    "latin1",
  ).toString("utf8");
const decodeQuoted = (text: string): string => bytes(text.replaceAll("=\r\n", ""));
const decodeWord = (encoding: string, text: string): string =>
  encoding.toUpperCase() === "B"
    ? Buffer.from(text, "base64").toString("utf8")
    : bytes(text.replaceAll("_", " "));
