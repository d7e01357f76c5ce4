import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { eventOf } from "@/lib/domain/audit/define-event";
import { benchMayNot } from "@/lib/domain/staff/bench";
import { staffEvents } from "@/lib/domain/staff/events";
import type { Permission } from "@/lib/domain/staff/permissions";
import { roles } from "@/lib/domain/staff/roles";
import { endOtherSessions } from "@/lib/operations/account/end-other-sessions";
import { endOwnSession } from "@/lib/operations/account/end-session";
import { execute } from "@/lib/operations/execute";
import { defineOperation } from "@/lib/operations/operation";
import { markSeen } from "@/lib/operations/staff/sign-in-seen";
import { signOut } from "@/lib/operations/staff/sign-out";
import { accountView } from "@/lib/views/account";
import { type Accounts, laboratoryScope, openAccounts, refusal } from "../../support/accounts";

let house: Accounts;
beforeAll(async () => {
  house = await openAccounts();
});
afterAll(() => house.close());

describe("a session", () => {
  it("is listed for its owner, with this one marked, and ended one by one or all but this", async () => {
    const mira = await house.person("mira", ["technician"]);
    const [first, second, third] = [
      await house.session(mira.email),
      await house.session(mira.email),
      await house.session(mira.email),
    ];
    const { sessions } = await accountView((await first.still())!, house.clock());
    expect(sessions.map(({ id, isThis }) => [id, isThis])).toEqual(
      expect.arrayContaining([
        [first.sessionId, true],
        [second.sessionId, false],
        [third.sessionId, false],
      ]),
    );
    const account = await first.account();
    await execute(endOwnSession, account, { sessionId: second.sessionId }, house.clock);
    expect(await second.still()).toBeNull();
    expect(await third.still()).not.toBeNull();
    expect(
      await refusal(execute(endOwnSession, account, { sessionId: second.sessionId }, house.clock)),
    ).toMatchObject({ code: "not-found" });
    expect(await execute(endOtherSessions, account, {}, house.clock)).toBe(1);
    expect(await third.still()).toBeNull();
    expect(await first.still()).not.toBeNull();
    expect(await refusal(execute(endOtherSessions, account, {}, house.clock))).toMatchObject({
      code: "wrong-state",
    });
  });

  it("of somebody else looks as if it were not there", async () => {
    const owner = await house.session((await house.person("olga", ["technician"])).email);
    const other = await house.session((await house.person("otto", ["quality-manager"])).email);
    const asked = execute(endOwnSession, await other.account(), { sessionId: owner.sessionId }, house.clock);
    expect(await refusal(asked)).toMatchObject({ code: "not-found" });
    expect(await owner.still()).not.toBeNull();
  });

  it("ends by signing out, and that one only", async () => {
    const { email } = await house.person("pia", ["technician"]);
    const [here, there] = [await house.session(email), await house.session(email)];
    await execute(signOut, await here.account(), {}, house.clock);
    expect(await here.still()).toBeNull();
    expect(await there.still()).not.toBeNull();
  });

  it("ends when left alone for two hours, not while used, and after twelve hours however busy", async () => {
    const { email } = await house.person("rosa", ["technician"]);
    const [left, used] = [await house.session(email), await house.session(email)];
    for (let hour = 0; hour < 11; hour += 1) {
      house.wait(3600);
      const seen = await inScope(laboratoryScope, (tx) =>
        tx.personSession.findUniqueOrThrow({ where: { id: used.sessionId } }),
      );
      await markSeen(used.sessionId, seen.lastSeenAt, house.clock());
      expect((await left.still()) !== null).toBe(hour < 1);
      expect(await used.still()).not.toBeNull();
    }
    house.wait(3600);
    expect(await used.still()).toBeNull();
  });

  it("writes down that it was seen once a minute at most", async () => {
    const opened = await house.session((await house.person("sven", ["technician"])).email);
    const seenAt = async () =>
      (
        await inScope(laboratoryScope, (tx) =>
          tx.personSession.findUniqueOrThrow({ where: { id: opened.sessionId } }),
        )
      ).lastSeenAt;
    const before = await seenAt();
    house.wait(59);
    await markSeen(opened.sessionId, before, house.clock());
    expect(await seenAt()).toEqual(before);
    house.wait(2);
    await markSeen(opened.sessionId, before, house.clock());
    expect(await seenAt()).toEqual(house.clock());
  });
});

describe("at the bench", () => {
  it("a technician's session is not ended by leaving it alone, but after twelve hours", async () => {
    const opened = await house.session((await house.person("tess", ["technician"])).email, undefined, true);
    expect(await opened.still()).toMatchObject({ session: "bench", roles: ["technician"] });
    house.wait(12 * 3600 - 1);
    expect(await opened.still()).not.toBeNull();
    house.wait(1);
    expect(await opened.still()).toBeNull();
  });

  it("is for technicians: anybody else gets a full session", async () => {
    const opened = await house.session(
      (await house.person("uma", ["quality-manager"])).email,
      undefined,
      true,
    );
    expect(await opened.still()).toMatchObject({ session: "full" });
  });

  const probe = (permission: Permission) =>
    defineOperation({
      name: "test/probe",
      permission,
      input: z.strictObject({}),
      perform: async () => ({ value: null, events: [eventOf(staffEvents.signedIn, "", {})] }),
    });
  const everything = { kind: "staff", personId: "nobody", name: "", roles } as const;

  it.each(benchMayNot)(
    "execute() refuses %s, which a full session of the same person may do",
    async (word) => {
      const operation = probe(word as Permission);
      expect(
        await refusal(execute(operation, { ...everything, session: "bench" }, {}, house.clock)),
      ).toMatchObject({ code: "not-permitted", message: expect.stringContaining("bench") });
      expect(await refusal(execute(operation, { ...everything, session: "full" }, {}, house.clock))).toBe(
        "answered",
      );
    },
  );

  it("a run is recorded", async () => {
    const actor = { ...everything, session: "bench" } as const;
    expect(await refusal(execute(probe("run.perform"), actor, {}, house.clock))).toBe("answered");
  });
});
