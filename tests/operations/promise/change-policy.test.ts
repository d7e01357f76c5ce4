import { afterAll, beforeAll, expect, it } from "vitest";
import { defaultPromisePolicy } from "@/lib/domain/promise/policy";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { changePromisePolicy } from "@/lib/operations/promise/change-policy";
import { promisePolicyView } from "@/lib/views/promise/promise-policy";
import {
  auditSentences,
  clock,
  type FrontDesk,
  openFrontDesk,
  recordLaboratory,
  refusalOf,
} from "../../support/front-desk";

let desk: FrontDesk;
let manager: Actor;
beforeAll(async () => {
  desk = await openFrontDesk();
  await recordLaboratory(desk);
  // The same person with another hat: only roles decide.
  manager = { ...desk.signatory, roles: ["quality-manager"] } as Actor;
});
afterAll(() => desk.close());

const { workingDays: _, ...numbers } = defaultPromisePolicy;
const typed = {
  ...(Object.fromEntries(Object.entries(numbers).map(([name, value]) => [name, String(value)])) as Record<
    keyof typeof numbers,
    string
  >),
  ...{ version: 1, dayStartsHour: "5", dayEndsHour: "21", workingDays: ["6", "1", "2", "3", "4", "5", "1"] },
  reason: "Two shifts from this month on",
};
const change = (more: object = {}, actor: Actor = manager) =>
  execute(changePromisePolicy, actor, { ...typed, ...more }, clock);

it("is what days are reckoned with from then on, and the log says why", async () => {
  expect((await promisePolicyView(desk.frontDesk)).policy).toEqual(defaultPromisePolicy);
  await change();
  expect(await promisePolicyView(desk.frontDesk)).toEqual({
    policy: { ...defaultPromisePolicy, dayStartsHour: 5, dayEndsHour: 21, workingDays: [1, 2, 3, 4, 5, 6] },
    ...{ version: 2, mayChange: false },
  });
  expect((await auditSentences()).at(-1)).toBe(
    "promise.policy-changed: changed what promised days are reckoned with: Two shifts from this month on",
  );
});

it("refuses what cannot be, what changes nothing, and those who do not configure the laboratory", async () => {
  const before = [await promisePolicyView(manager), await auditSentences()];
  const fields = async (more: object) =>
    Object.keys((await refusalOf(change({ version: 2, ...more }))).fields ?? {});
  expect(await fields({ dayEndsHour: "5" })).toEqual(["dayEndsHour"]);
  expect(await fields({ openBelowCelsius: "24" })).toEqual(["openBelowCelsius"]);
  expect(await fields({ dwellHours: "soon" })).toEqual(["dwellHours"]);
  expect(await fields({ workingDays: [] })).toEqual(["workingDays"]);
  expect(await fields({ reason: " " })).toEqual(["reason"]);
  expect(await refusalOf(change({ version: 2 }))).toMatchObject({ code: "rule" });
  expect(await refusalOf(change({ reviewDays: "3" }))).toMatchObject({ code: "changed-meanwhile" });
  for (const actor of [desk.frontDesk, desk.technician, desk.northern.actor])
    expect(await refusalOf(change({ version: 2 }, actor))).toMatchObject({ code: "not-permitted" });
  expect([await promisePolicyView(manager), await auditSentences()]).toEqual(before);
});
