import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { beginSecondFactor } from "@/lib/operations/account/begin-second-factor";
import { confirmSecondFactor } from "@/lib/operations/account/confirm-second-factor";
import { endSecondFactor } from "@/lib/operations/account/end-second-factor";
import { resetSecondFactor } from "@/lib/operations/account/reset-second-factor";
import { execute } from "@/lib/operations/execute";
import { codeAt, stepOf } from "@/lib/operations/one-time-code";
import { signInWithCode } from "@/lib/operations/staff/sign-in-code";
import { accountView, begunFactorView } from "@/lib/views/account";
import {
  type Accounts,
  laboratoryScope,
  openAccounts,
  password,
  publicUrl,
  refusal,
} from "../../support/accounts";

let house: Accounts;
beforeAll(async () => {
  house = await openAccounts();
});
afterAll(() => house.close());

const fromText = (text: string): Uint8Array => {
  const bits = [...text.replaceAll(" ", "")]
    .map((sign) => "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(sign).toString(2).padStart(5, "0"))
    .join("");
  return Uint8Array.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)));
};

/** A person with one-time codes, set up as at the screen: the secret is what the page shows. */
const withCodes = async (name: string, role: "technician" | "quality-manager" = "technician") => {
  const person = await house.person(name, [role]);
  const opened = await house.session(person.email);
  const account = await opened.account();
  await execute(beginSecondFactor, account, { password }, house.clock);
  const begun = await begunFactorView((await opened.still())!, house.clock());
  const secret = fromText(begun?.secret ?? "");
  const now = () => codeAt(secret, stepOf(house.clock()));
  const recovery = await execute(confirmSecondFactor, account, { code: now(), publicUrl }, house.clock);
  house.wait(30);
  return { ...person, secret, now, recovery, opened, account };
};

/** The first step: the password was right, and a code is asked for. */
const ticket = async (email: string) => {
  const first = await house.enter(email);
  if (first.kind !== "code") throw new Error(`no code was asked for: ${first.kind}`);
  return { personId: first.personId, sessionEpoch: first.sessionEpoch };
};
const rest = { atBench: false, cameBy: "password", device: "" } as const;
const open = (held: Awaited<ReturnType<typeof ticket>>, code: string) =>
  signInWithCode({ ...held, code, ...rest }, house.clock, publicUrl);
const second = async (email: string, code: string) => open(await ticket(email), code);

describe("one-time codes", () => {
  it("are asked for once they are set up, and the password alone opens nothing", async () => {
    const person = await withCodes("anna");
    expect(await house.enter(person.email)).toMatchObject({ kind: "code" });
    const answer = await second(person.email, person.now());
    expect(answer).toMatchObject({ kind: "welcome", personId: person.id });
    const began = (await house.events("account.session-began")).at(-1);
    expect(JSON.parse(began?.payload ?? "{}")).toMatchObject({ hadCode: true });
  });

  it("lie sealed: the secret is nowhere in the database as it is", async () => {
    const person = await withCodes("bert");
    const row = await inScope(laboratoryScope, (tx) =>
      tx.secondFactor.findFirstOrThrow({ where: { personId: person.id } }),
    );
    expect(Buffer.from(row.sealedSecret).includes(Buffer.from(person.secret))).toBe(false);
    const hashes = await inScope(laboratoryScope, (tx) => tx.recoveryCode.findMany());
    for (const code of person.recovery) expect(JSON.stringify(hashes)).not.toContain(code);
  });

  it("open once each, also for those who send one at the same moment", async () => {
    const person = await withCodes("cleo");
    const held = await ticket(person.email);
    const answers = await Promise.all(Array.from({ length: 4 }, () => open(held, person.now())));
    expect(answers.filter(({ kind }) => kind === "welcome")).toHaveLength(1);
    house.wait(30);
    const code = person.now();
    expect((await second(person.email, code)).kind).toBe("welcome");
    expect((await second(person.email, code)).kind).toBe("refused");
  });

  it("are taken of the present step and the one before, never of an older or a later one", async () => {
    const person = await withCodes("dora");
    house.wait(120);
    const at = (offset: number) => codeAt(person.secret, stepOf(house.clock()) + offset);
    const held = await ticket(person.email);
    expect((await open(held, at(-2))).kind).toBe("refused");
    expect((await open(held, at(1))).kind).toBe("refused");
    expect((await open(held, at(-1))).kind).toBe("welcome");
    expect((await open(held, at(0))).kind).toBe("welcome");
    // Once a later step was used, the one before is used up too.
    expect((await open(held, at(-1))).kind).toBe("refused");
  });

  it("slow guessing down and lock like passwords do", async () => {
    const person = await withCodes("emil");
    const held = await ticket(person.email);
    const kinds: string[] = [];
    for (let guess = 0; guess < 5; guess += 1) kinds.push((await open(held, "000000")).kind);
    expect(kinds).toEqual(["refused", "refused", "refused", "refused", "wait"]);
    for (let guess = 0; guess < 5; ) {
      const answer = await open(held, "000000");
      if (answer.kind === "wait") house.wait(answer.seconds);
      else guess += 1;
    }
    expect((await house.events("account.locked")).at(-1)?.entityId).toBe(person.id);
    // Locked: the right code says the same as a wrong one.
    house.wait(600);
    expect((await open(held, person.now())).kind).toBe("refused");
  });

  it("can be replaced by a recovery code, once, and the owner is told", async () => {
    const person = await withCodes("fritz");
    expect(person.recovery).toHaveLength(10);
    const [first = "", other = ""] = person.recovery;
    const answers = await Promise.all([second(person.email, first), second(person.email, first)]);
    expect(answers.map(({ kind }) => kind).toSorted()).toEqual(["refused", "welcome"]);
    expect((await second(person.email, other.toUpperCase().replaceAll("-", " "))).kind).toBe("welcome");
    const told = (await house.mails("account-notice")).filter((mail) => mail.recipient === person.email);
    expect(told.filter((mail) => mail.subject.includes("recovery code"))).toHaveLength(2);
    expect((await house.events("account.recovery-code-used")).at(-1)?.payload).toBe('{"left":8}');
  });

  it("are not set up without the password, nor by a code that does not fit, nor long after they were begun", async () => {
    const person = await house.person("greta", ["technician"]);
    const opened = await house.session(person.email);
    const account = await opened.account();
    const wrong = execute(beginSecondFactor, account, { password: "not the password" }, house.clock);
    expect(await refusal(wrong)).toMatchObject({ fields: { password: expect.any(String) } });
    await execute(beginSecondFactor, account, { password }, house.clock);
    const begun = await begunFactorView((await opened.still())!, house.clock());
    const code = () => codeAt(fromText(begun?.secret ?? ""), stepOf(house.clock()));
    const confirm = (typed: string) =>
      refusal(execute(confirmSecondFactor, account, { code: typed, publicUrl }, house.clock));
    expect(await confirm(codeAt(new Uint8Array(20), 1))).toMatchObject({
      fields: { code: expect.any(String) },
    });
    expect((await house.enter(person.email)).kind).toBe("welcome");
    house.wait(20 * 60 + 1);
    expect(await confirm(code())).toMatchObject({ code: "wrong-state" });
    expect(await begunFactorView((await opened.still())!, house.clock())).toBeNull();
  });

  it("are given up with password and code, and taken away by the quality manager with a reason", async () => {
    const person = await withCodes("hugo");
    const give = (typed: { password: string; code: string }) =>
      refusal(execute(endSecondFactor, person.account, { ...typed, publicUrl }, house.clock));
    expect(await give({ password: "not the password", code: person.now() })).toMatchObject({
      code: "invalid",
    });
    expect(await give({ password, code: "000000" })).toMatchObject({ fields: { code: expect.any(String) } });
    expect(await give({ password, code: person.now() })).toBe("answered");
    expect((await house.enter(person.email)).kind).toBe("welcome");

    const lost = await withCodes("iris");
    const manager = await withCodes("jana", "quality-manager");
    const by = (await manager.opened.still())!;
    const take = (personId: string, reason: string) =>
      refusal(execute(resetSecondFactor, by, { personId, reason, publicUrl }, house.clock));
    expect(await take(lost.id, " ")).toMatchObject({ fields: { reason: expect.any(String) } });
    expect(await take(manager.id, "for myself")).toMatchObject({ code: "rule" });
    expect(await take(lost.id, "seen in person at the desk")).toBe("answered");
    expect(await lost.opened.still()).toBeNull();
    expect((await house.enter(lost.email)).kind).toBe("welcome");
    expect((await house.events("account.factor-reset")).at(-1)?.payload).toContain("seen in person");
  });

  it("where the laboratory asks for them, nothing is open before they are set up", async () => {
    const person = await house.person("kurt", ["signatory"]);
    await house.policy({ secondFactorRoles: ["signatory"] });
    const opened = await house.session(person.email);
    const actor = (await opened.still())!;
    expect(actor).toMatchObject({ mustSetUp: "second-factor", roles: [] });
    expect((await accountView(actor, house.clock())).mustSetUp).toBe(true);
    await execute(beginSecondFactor, await opened.account(), { password }, house.clock);
    const begun = await begunFactorView(actor, house.clock());
    const code = codeAt(fromText(begun?.secret ?? ""), stepOf(house.clock()));
    await execute(confirmSecondFactor, await opened.account(), { code, publicUrl }, house.clock);
    expect(await opened.still()).toMatchObject({ roles: ["signatory"] });
  });
});
