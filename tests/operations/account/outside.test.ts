import { afterAll, beforeAll, expect, it } from "vitest";
import { askOutsideLink, linkOutside, unlinkOutside } from "@/lib/operations/account/outside-link";
import { execute } from "@/lib/operations/execute";
import { outsidePerson } from "@/lib/operations/staff/sign-in-outside";
import { type Accounts, openAccounts, password, refusal } from "../../support/accounts";

let house: Accounts;
beforeAll(async () => {
  house = await openAccounts();
});
afterAll(() => house.close());

const key = (subject: string) => ({ issuer: "https://id.example.org", subject });

const linked = async (name: string, subject: string) => {
  const person = await house.person(name, ["technician"]);
  const account = await (await house.session(person.email)).account();
  await execute(linkOutside, account, key(subject), house.clock);
  return { ...person, account };
};

it("lets in whoever was linked, and nobody else of the provider", async () => {
  const person = await linked("lin", "one");
  expect(await outsidePerson(key("one"), house.clock)).toMatchObject({ kind: "person" });
  expect(await outsidePerson(key("another"), house.clock)).toEqual({ kind: "refused" });
  expect(await outsidePerson({ ...key("one"), issuer: "https://else.example.org" }, house.clock)).toEqual({
    kind: "refused",
  });
  await execute(unlinkOutside, person.account, { password }, house.clock);
  expect(await outsidePerson(key("one"), house.clock)).toEqual({ kind: "refused" });
  expect(await refusal(execute(unlinkOutside, person.account, { password }, house.clock))).toMatchObject({
    code: "wrong-state",
  });
});

it("links one person of the provider with one account, also when two ask at once", async () => {
  const first = await house.person("ada", ["technician"]);
  const second = await house.person("bea", ["technician"]);
  const accounts = [
    await (await house.session(first.email)).account(),
    await (await house.session(second.email)).account(),
  ];
  const asked = await Promise.allSettled(
    accounts.map((account) => execute(linkOutside, account, key("two"), house.clock)),
  );
  expect(asked.map(({ status }) => status).toSorted()).toEqual(["fulfilled", "rejected"]);
});

it("asks for the password before it links and before it parts", async () => {
  const person = await linked("cay", "three");
  for (const operation of [askOutsideLink, unlinkOutside])
    expect(
      await refusal(execute(operation, person.account, { password: "not this one at all" }, house.clock)),
    ).toMatchObject({ fields: { password: expect.any(String) } });
  expect(await outsidePerson(key("three"), house.clock)).toMatchObject({ kind: "person" });
});
