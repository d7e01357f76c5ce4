import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { maskAccess } from "@/lib/domain/mail/mask-access";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { acceptInvitation } from "@/lib/operations/account/accept-invitation";
import { answerReset } from "@/lib/operations/account/answer-reset";
import { askReset } from "@/lib/operations/account/ask-reset";
import { invitePerson } from "@/lib/operations/account/invite";
import { inviteColleague } from "@/lib/operations/account/invite-colleague";
import { setPasswordByLink } from "@/lib/operations/account/set-password-by-link";
import {
  withdrawAnyInvitation,
  withdrawColleagueInvitation,
} from "@/lib/operations/account/withdraw-invitation";
import { execute } from "@/lib/operations/execute";
import { setPersonActive } from "@/lib/operations/staff/set-active";
import { accessLinkView } from "@/lib/views/access-link";
import {
  type Accounts,
  laboratoryScope,
  openAccounts,
  publicUrl,
  refusal,
  system,
  tokenIn,
} from "../../support/accounts";

let house: Accounts;
beforeAll(async () => {
  house = await openAccounts();
});
afterAll(() => house.close());

const chosen = "three words of mine";
const accept = (token: string, name = "Ada") =>
  execute(
    acceptInvitation,
    { kind: "system", name: "invitation" },
    { token, name, password: chosen, passwordAgain: chosen },
    house.clock,
  );
const newest = async (kind: string, recipient: string) =>
  (await house.mails(kind)).filter((mail) => mail.recipient === recipient).at(-1)?.body ?? "";
const invite = (email: string) =>
  execute(
    invitePerson,
    system,
    { name: "Ada", email, roles: ["technician"], customerId: null, publicUrl },
    house.clock,
  );
const over = { code: "wrong-state", message: expect.stringContaining("opens nothing") };

describe("an invitation", () => {
  it("lets one person in, with the roles it names, once; the database knows only the hash of its link", async () => {
    await invite("ada@example.test");
    const token = tokenIn(await newest("invitation", "ada@example.test"), "invitation");
    const links = await inScope(laboratoryScope, (tx) => tx.accessLink.findMany());
    expect(JSON.stringify(links)).not.toContain(token);
    expect(await accessLinkView("reset", token, house.clock())).toBeNull();
    const answers = await Promise.all([refusal(accept(token)), refusal(accept(token))]);
    expect(answers.filter((answer) => answer === "answered")).toHaveLength(1);
    expect(answers).toContainEqual(over);
    const opened = await house.session("ada@example.test", chosen);
    expect(await opened.still()).toMatchObject({ kind: "staff", roles: ["technician"], name: "Ada" });
  });

  it("opens nothing once it is withdrawn, over, or followed by another", async () => {
    const { id } = await invite("bea@example.test");
    const first = tokenIn(await newest("invitation", "bea@example.test"), "invitation");
    await execute(withdrawAnyInvitation, system, { id }, house.clock);
    expect(await refusal(accept(first))).toEqual(over);
    await invite("bea@example.test");
    const second = tokenIn(await newest("invitation", "bea@example.test"), "invitation");
    await invite("bea@example.test");
    expect(await refusal(accept(second))).toEqual(over);
    const bodies = (await house.mails("invitation")).map(({ body }) => tokenIn(body, "invitation"));
    const third = bodies.find((token) => token !== first && token !== second && token !== "");
    expect(third).toBeDefined();
    house.wait(72 * 3600);
    for (const token of bodies) expect(await refusal(accept(token))).toEqual(over);
    expect(await refusal(accept("x".repeat(43)))).toEqual(over);
  });

  it("is not stored for an address that signs in already, nor by whoever may not invite", async () => {
    const { email, id } = await house.person("carl", ["technician"]);
    expect(await refusal(invite(email))).toMatchObject({ fields: { email: expect.any(String) } });
    const technician = { kind: "staff", personId: id, name: "", roles: ["technician"] } as const;
    const input = { name: "D", email: "d@example.test", roles: ["technician" as const], customerId: null };
    const asked = execute(invitePerson, technician, { ...input, publicUrl }, house.clock);
    expect(await refusal(asked)).toMatchObject({ code: "not-permitted" });
  });

  it("of a colleague leads to the inviter's own customer, never to the laboratory or another", async () => {
    const [north, south] = [await house.customer("North"), await house.customer("South")];
    const manager = async (name: string, customerId: string) => {
      const opened = await house.session((await house.person(name, [], customerId)).email);
      return (await opened.still())!;
    };
    const [nell, sue] = [await manager("nell", north.id), await manager("sue", south.id)];
    const colleague = {
      name: "Ned",
      email: "ned@example.test",
      roles: ["customer-orderer" as const],
      publicUrl,
    };
    const { id } = await execute(inviteColleague, nell, colleague, house.clock);
    expect(await refusal(execute(withdrawColleagueInvitation, sue, { id }, house.clock))).toMatchObject({
      code: "not-found",
    });
    const token = tokenIn(await newest("invitation", "ned@example.test"), "invitation");
    await accept(token, "Ned");
    const opened = await house.session("ned@example.test", chosen);
    expect(await opened.still()).toMatchObject({
      kind: "customer",
      customerId: north.id,
      roles: ["customer", "customer-orderer"],
    });
    // An account elsewhere is not betrayed: the answer is that of an address nobody has.
    const foreign = { ...colleague, email: "sue@example.test" };
    expect(await execute(inviteColleague, nell, foreign, house.clock)).toHaveProperty("id");
    const staffRole = { ...colleague, email: "x@example.test", roles: ["quality-manager" as never] };
    expect(await refusal(execute(inviteColleague, nell, staffRole, house.clock))).toMatchObject({
      code: "invalid",
    });
    const reader = (await opened.still())!;
    expect(await refusal(execute(inviteColleague, reader, colleague, house.clock))).toMatchObject({
      code: "not-permitted",
    });
  });
});

const set = (token: string, password = "another set of words") =>
  execute(
    setPasswordByLink,
    { kind: "system", name: "reset" },
    { token, password, passwordAgain: password, publicUrl },
    house.clock,
  );

describe("a link for a new password", () => {
  it("works once, ends every session, opens a lock, and tells the owner", async () => {
    const { id, email } = await house.person("erin", ["technician"]);
    const opened = await house.session(email);
    await inScope(laboratoryScope, (tx) =>
      tx.person.update({ where: { id }, data: { lockedUntil: new Date(house.clock().getTime() + 9e5) } }),
    );
    await answerReset(email, publicUrl, house.clock);
    const token = tokenIn(await newest("reset", email), "reset");
    expect(await refusal(set(token, "password1234"))).toMatchObject({
      fields: { password: expect.any(String) },
    });
    const answers = await Promise.all([refusal(set(token)), refusal(set(token))]);
    expect(answers.filter((answer) => answer === "answered")).toHaveLength(1);
    expect(answers).toContainEqual(over);
    expect(await opened.still()).toBeNull();
    expect((await house.enter(email)).kind).toBe("refused");
    await house.session(email, "another set of words");
    expect(await newest("account-notice", email)).toContain("new password was set");
  });

  it("makes every earlier one void, and is over after an hour", async () => {
    const { email } = await house.person("fred", ["technician"]);
    await answerReset(email, publicUrl, house.clock);
    const first = tokenIn(await newest("reset", email), "reset");
    house.wait(1);
    await answerReset(email, publicUrl, house.clock);
    const second = tokenIn(await newest("reset", email), "reset");
    expect(await refusal(set(first))).toEqual(over);
    house.wait(3600);
    expect(await refusal(set(second))).toEqual(over);
  });

  it("goes to nobody who has no account or a closed one, and never says so", async () => {
    const gone = await house.person("gus", ["technician"]);
    await execute(setPersonActive, system, { id: gone.id, version: 1, active: false }, house.clock);
    for (const email of [gone.email, "nobody@example.test"]) {
      expect(await askReset({ email, client: "192.0.2.1" }, house.clock)).toBeUndefined();
      expect(await answerReset(email, publicUrl, house.clock)).toBeUndefined();
      expect(await newest("reset", email)).toBe("");
    }
  });

  it("is asked for three times an hour an address, in silence, and twenty times a client, aloud", async () => {
    const asked = async () => (await house.events("account.reset-asked")).length;
    const before = await asked();
    for (let time = 0; time < 5; time += 1)
      await askReset({ email: "hal@example.test", client: "192.0.2.2" }, house.clock);
    expect((await asked()) - before).toBe(3);
    const many = Array.from({ length: 20 }, (_, index) =>
      refusal(askReset({ email: `i${index}@example.test`, client: "192.0.2.2" }, house.clock)),
    );
    expect((await Promise.all(many)).filter((answer) => answer !== "answered")).toHaveLength(5);
  });

  it("is not shown to whoever reads the kept mail", async () => {
    const { email } = await house.person("ina", ["technician"]);
    await answerReset(email, publicUrl, house.clock);
    const body = await newest("reset", email);
    expect(tokenIn(body, "reset")).toHaveLength(43);
    expect(maskAccess(body)).toContain("/reset/[kept from view]");
  });

  it("is no way in for somebody signed in as another", async () => {
    const { id } = await house.person("jon", ["technician"]);
    const input = { token: "x".repeat(43), password: chosen, passwordAgain: chosen, publicUrl };
    const asked = execute(setPasswordByLink, ownAccountOf({ personId: id, name: "" }), input, house.clock);
    expect(await refusal(asked)).toMatchObject({ code: "not-permitted" });
  });
});
