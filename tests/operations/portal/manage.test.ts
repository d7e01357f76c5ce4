import { afterAll, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { addAddress } from "@/lib/operations/portal/add-address";
import { changeAddress } from "@/lib/operations/portal/change-address";
import { changeColleagueRoles } from "@/lib/operations/portal/change-colleague-roles";
import { setAddressActive } from "@/lib/operations/portal/set-address-active";
import { setColleagueActive } from "@/lib/operations/portal/set-colleague-active";
import { setInterval as setRecallInterval } from "@/lib/operations/portal/set-interval";
import { codeOf } from "../../support/code-of";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const works = {
  kind: "delivery",
  title: "Works 2",
  addressLines: "Works Road 2\nNowhere",
  contactName: "",
} as const;
const lab = <T>(question: Parameters<typeof inScope<T>>[1]) => inScope({ kind: "laboratory" }, question);
const reader = (actor: Actor): Actor =>
  actor.kind === "customer" ? { ...actor, roles: ["customer", "customer-orderer"] } : actor;
const own = (id: string) => lab((tx) => tx.customerAddress.findUniqueOrThrow({ where: { id } }));

it("keeps several addresses of a customer, and lets nobody else's be touched", async () => {
  const { northern, southern } = desk;
  const { id } = await execute(addAddress, northern.actor, works, clock);
  await execute(
    changeAddress,
    northern.actor,
    { ...works, id, version: 1, title: "Works 2, goods in" },
    clock,
  );
  expect(await own(id)).toMatchObject({
    customerId: northern.customerId,
    title: "Works 2, goods in",
    version: 2,
  });
  const stale = { ...works, id, version: 1, title: "Third" };
  expect(await codeOf(execute(changeAddress, northern.actor, stale, clock))).toBe("changed-meanwhile");
  const foreign = await refusalOf(execute(changeAddress, southern.actor, { ...stale, version: 2 }, clock));
  const unknown = await refusalOf(
    execute(
      changeAddress,
      southern.actor,
      { ...stale, id: "0f8fad5b-d9cb-469f-a165-70867728950e", version: 2 },
      clock,
    ),
  );
  expect(foreign).toEqual(unknown);
  expect(foreign.code).toBe("not-found");
  const off = { id, version: 2, active: false };
  expect(await codeOf(execute(setAddressActive, southern.actor, off, clock))).toBe("not-found");
  await execute(setAddressActive, northern.actor, off, clock);
  expect(await codeOf(execute(setAddressActive, northern.actor, { ...off, version: 3 }, clock))).toBe(
    "wrong-state",
  );
  expect(await own(id)).toMatchObject({ active: false });
  expect(await auditSentences()).toContain(
    "address.deactivated: took a delivery address of a customer out of use",
  );
});

it("is only for whoever may manage, and refuses at the field", async () => {
  expect(await codeOf(execute(addAddress, reader(desk.northern.actor), works, clock))).toBe("not-permitted");
  expect(await codeOf(execute(addAddress, desk.frontDesk, works, clock))).toBe("not-permitted");
  const refused = await refusalOf(
    execute(addAddress, desk.northern.actor, { ...works, title: "", addressLines: " " }, clock),
  );
  expect(Object.keys(refused.fields ?? {}).toSorted()).toEqual(["addressLines", "title"]);
});

it("gives and takes a colleague's rights, never the last manager's, never another customer's", async () => {
  const { northern, southern } = desk;
  const managerId = northern.actor.kind === "customer" ? northern.actor.personId : "";
  const colleague = await lab(async (tx) => {
    const row = await tx.person.create({
      data: {
        email: "col@example.org",
        name: "Cole League",
        passwordHash: "x",
        customerId: northern.customerId,
      },
    });
    await tx.personRole.create({ data: { personId: row.id, role: "customer" } });
    return row;
  });
  const rolesOf = async (personId: string) =>
    (await lab((tx) => tx.personRole.findMany({ where: { personId } }))).map(({ role }) => role).toSorted();
  const drop = { id: managerId, version: 1, roles: ["customer-orderer" as const] };
  expect(await codeOf(execute(changeColleagueRoles, northern.actor, drop, clock))).toBe("rule");
  const raise = { id: colleague.id, version: 1, roles: ["customer-manager" as const] };
  expect(await codeOf(execute(changeColleagueRoles, southern.actor, raise, clock))).toBe("not-found");
  expect(await rolesOf(colleague.id)).toEqual(["customer"]);
  await execute(changeColleagueRoles, northern.actor, raise, clock);
  expect(await rolesOf(colleague.id)).toEqual(["customer", "customer-manager"]);
  const leave = { id: managerId, version: 1, active: false };
  expect(await codeOf(execute(setColleagueActive, northern.actor, leave, clock))).toBe("rule");
  const end = { id: colleague.id, version: 2, active: false };
  expect(await codeOf(execute(setColleagueActive, southern.actor, end, clock))).toBe("not-found");
  await execute(setColleagueActive, northern.actor, end, clock);
  const after = await lab((tx) => tx.person.findUniqueOrThrow({ where: { id: colleague.id } }));
  expect(after).toMatchObject({ active: false, sessionEpoch: colleague.sessionEpoch + 1 });
  // Only active managers count: the one who is left may not give it up.
  expect(await codeOf(execute(changeColleagueRoles, northern.actor, drop, clock))).toBe("rule");
});

it("takes an interval for all of a customer's sensors, and for one only if it is theirs", async () => {
  await execute(setRecallInterval, desk.northern.actor, { months: "12" }, clock);
  expect(
    await lab((tx) => tx.recallInterval.findMany({ where: { customerId: desk.northern.customerId } })),
  ).toMatchObject([{ serial: "", months: 12, noticeDays: 30 }]);
  const refused = await refusalOf(
    execute(setRecallInterval, desk.northern.actor, { serial: "not theirs", months: "6" }, clock),
  );
  expect(refused.fields).toHaveProperty("serial");
  expect(await codeOf(execute(setRecallInterval, reader(desk.northern.actor), { months: "6" }, clock))).toBe(
    "not-permitted",
  );
});
