import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { unlockPerson } from "@/lib/operations/account/unlock";
import { execute } from "@/lib/operations/execute";
import { type Accounts, laboratoryScope, openAccounts, refusal, system } from "../../support/accounts";

let house: Accounts;
beforeAll(async () => {
  house = await openAccounts();
});
afterAll(() => house.close());

const failUntil = async (email: string, failures: number) => {
  const answers: string[] = [];
  for (let failed = 0; failed < failures; ) {
    const answer = await house.enter(email, "not the password");
    if (answer.kind === "wait") house.wait(answer.seconds);
    else {
      answers.push(answer.kind);
      failed += 1;
    }
  }
  return answers;
};
const patient = async (email: string) => {
  for (;;) {
    const answer = await house.enter(email);
    if (answer.kind !== "wait") return answer.kind;
    house.wait(answer.seconds);
  }
};
const lockOf = async (id: string) =>
  (await inScope(laboratoryScope, (tx) => tx.person.findUniqueOrThrow({ where: { id } }))).lockedUntil;

describe("after ten failures", () => {
  it("the account is locked, the right password says the same as a wrong one, and the owner is told once", async () => {
    const { id, email } = await house.person("lena", ["technician"]);
    await failUntil(email, 9);
    expect(await lockOf(id)).toBeNull();
    await failUntil(email, 1);
    expect(await lockOf(id)).not.toBeNull();
    expect(await patient(email)).toBe("refused");
    expect(await patient(email)).toBe("refused");
    const told = (await house.mails("account-notice")).filter((mail) => mail.recipient === email);
    expect(told).toHaveLength(1);
    expect(told[0]?.body).toContain("locked");
    expect((await house.events("account.locked")).filter((event) => event.entityId === id)).toHaveLength(1);
    expect((await house.events("account.refused-while-locked")).at(-1)?.entityId).toBe(id);
    house.wait(1800);
    expect(await patient(email)).toBe("welcome");
  });

  it("an address that nobody has answers just the same, step by step", async () => {
    const { email } = await house.person("mara", ["technician"]);
    expect(await failUntil("nobody@example.test", 12)).toEqual(await failUntil(email, 12));
  });

  it("the quality manager opens it before its time, and nobody else", async () => {
    const { id, email } = await house.person("nils", ["technician"]);
    const manager = await house.session((await house.person("quinn", ["quality-manager"])).email);
    await failUntil(email, 10);
    const technician = { kind: "staff", personId: id, name: "", roles: ["technician"] } as const;
    expect(await refusal(execute(unlockPerson, technician, { personId: id }, house.clock))).toMatchObject({
      code: "not-permitted",
    });
    await execute(unlockPerson, (await manager.still())!, { personId: id }, house.clock);
    expect(await house.enter(email)).toMatchObject({ kind: "welcome" });
    expect(await refusal(execute(unlockPerson, system, { personId: id }, house.clock))).toMatchObject({
      code: "wrong-state",
    });
  });
});
