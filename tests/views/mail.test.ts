import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { deliver } from "@/lib/operations/mail/deliver";
import { remindOfDue } from "@/lib/operations/reminder/remind-of-due";
import { mailView } from "@/lib/views/mail";
import { todayView } from "@/lib/views/today";
import { acceptAll } from "../jobs/accept-all";
import { publicUrl } from "../jobs/mail-world";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { inServiceRow } from "../support/in-service";

let database: TestDatabase;
let admin: pg.Client;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  await acceptAll(admin, world.people.signatory.personId);
});
afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await database?.drop();
});

const page = (today: string) => mailView(world.people.quality, today);

describe("the mail page", () => {
  it("says what comes next before anything is due", async () => {
    expect(await page("2026-12-10")).toEqual({
      nextReminderOn: "2026-12-11",
      recipients: ["quinn.quality@example.test"],
      due: [],
      messages: [],
      next: null,
      previous: null,
    });
  });

  it("shows a thing as not told, then as told, with the message that waits", async () => {
    const before = await page("2026-12-12");
    expect(before.nextReminderOn).toBe("2026-12-12");
    expect(before.due.map(({ title, stage, isTold }) => [title, stage, isTold])).toEqual(
      ["J-1", "R-S1", "R-S2", "V-1", "X-1"].map((tag) => [tag, "due", false]),
    );
    await remindOfDue(publicUrl, () => new Date("2026-12-12T05:00:00Z"));
    const after = await page("2026-12-12");
    // The characterisation is the next to reach its notice: valid until 2027-02-01.
    expect(after.nextReminderOn).toBe("2027-01-02");
    expect(after.due.every(({ isTold }) => isTold)).toBe(true);
    expect(after.messages).toMatchObject([
      { recipient: "quinn.quality@example.test", state: "waiting", attempts: 0, last: null },
    ]);
  });

  it("shows the last error while it is tried again, that it was given up, and that it was sent", async () => {
    const id = (await page("2026-12-12")).messages[0]?.id ?? "";
    const clock = () => new Date("2026-12-12T05:00:01Z");
    const refused = { kind: "smtp", carry: () => Promise.reject(new Error("451 try\r\nlater")) } as const;
    await expect(deliver(id, refused, false, clock)).rejects.toThrow("451");
    const last = { at: "2026-12-12T05:00:01.000Z", detail: "451 try later", transport: "smtp" };
    expect((await page("2026-12-12")).messages).toMatchObject([{ state: "failing", attempts: 1, last }]);
    await expect(deliver(id, refused, true, clock)).rejects.toThrow("451");
    expect((await page("2026-12-12")).messages).toMatchObject([{ state: "given-up", attempts: 2 }]);
    await deliver(id, { kind: "file", carry: async () => "1.eml" }, false, clock);
    expect((await page("2026-12-12")).messages).toMatchObject([
      { state: "sent", attempts: 3, last: { detail: "1.eml", transport: "file" } },
    ]);
  });

  it("is the quality manager's alone", async () => {
    for (const person of [world.people.technician, world.people.desk, world.people.north])
      await expect(mailView(person, "2026-12-12")).rejects.toMatchObject({
        refusal: { code: "not-permitted" },
      });
  });
});

describe("today", () => {
  const due = async (today: string) =>
    (await todayView(world.people.technician, today)).find(({ key }) => key === "due");

  it("lists what is due and what is out of date, each to its page", async () => {
    expect(await due("2026-12-10")).toMatchObject({ count: 0, items: [] });
    expect((await due("2027-01-11"))?.items).toContainEqual({
      key: `calibration ${world.references[0].id}`,
      label: "R-S1",
      detail: "calibration out of date since 2027-01-10",
      href: `/standards/${world.references[0].id}`,
      state: "out-of-date",
    });
    const items = (await due("2027-01-05"))?.items ?? [];
    expect((await due("2027-01-05"))?.count).toBe(6);
    expect(items.at(-1)).toMatchObject({
      label: "F-1, Block of six",
      detail: "characterisation due 2027-02-01",
    });
  });

  it("lists a reference without an accepted calibration, which no day would tell", async () => {
    const { rows } = await admin.query<{ id: string }>(
      `INSERT INTO equipment (tag, kind, maker, model, serial, particulars)
       SELECT 'R-NEW', kind, maker, model, 'NEW', particulars FROM equipment WHERE tag = 'R-S1' RETURNING id`,
    );
    const id = rows[0]!.id;
    // Received only, nobody needs to hear of it.
    expect((await due("2026-12-10"))?.items ?? []).toEqual([]);
    await inScope({ kind: "laboratory" }, (tx) => inServiceRow(tx, id, world.people.quality.personId));
    expect((await due("2026-12-10"))?.items).toMatchObject([
      { label: "R-NEW", detail: "no accepted calibration", state: "out-of-date" },
    ]);
  });
});
