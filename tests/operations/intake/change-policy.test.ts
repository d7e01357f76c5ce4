import { afterAll, beforeAll, expect, it } from "vitest";
import { defaultIntakePolicy } from "@/lib/domain/intake/policy";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { changeIntakePolicy } from "@/lib/operations/intake/change-policy";
import { intakePolicyView } from "@/lib/views/sensor/intake-policy";
import { sensorView } from "@/lib/views/sensor/sensor";
import {
  auditSentences,
  clock,
  type FrontDesk,
  openFrontDesk,
  recordLaboratory,
  refusalOf,
} from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";

let desk: FrontDesk;
let manager: Actor;
beforeAll(async () => {
  desk = await openFrontDesk();
  await recordLaboratory(desk);
  // The same person with another hat: only roles decide.
  manager = { ...desk.signatory, roles: ["quality-manager"] } as Actor;
});
afterAll(() => desk.close());

const typed = {
  version: 1,
  insulationNew: "1000",
  insulationUsed: "20",
  insulationNotKnown: "100",
  loopTolerancePercent: "10",
  largestLoopOhm: "500",
  resistivity: Object.fromEntries(
    Object.entries(defaultIntakePolicy.pairResistivityMicroohmMetre).map(([type, value]) => [
      type,
      String(value),
    ]),
  ) as Record<keyof typeof defaultIntakePolicy.pairResistivityMicroohmMetre, string>,
  reason: "Confirmed by our own measurements",
};
const change = (more: object = {}, actor: Actor = manager) =>
  execute(changeIntakePolicy, actor, { ...typed, ...more }, clock);

it("holds what comes from then on against the new limits; what is here keeps the verdict of its day", async () => {
  const number = await accepted(desk, orderInput(desk.northern.customerId));
  const [before] = await received(desk, number, "A1");
  expect((await intakePolicyView(desk.technician)).policy).toEqual(defaultIntakePolicy);
  await change();
  const { policy, mayChange } = await intakePolicyView(desk.technician);
  expect(mayChange).toBe(false);
  expect(policy).toMatchObject({ loopTolerancePercent: 10, leastInsulationMegaohm: { new: 1000, used: 20 } });
  expect((await auditSentences()).at(-1)).toBe(
    "sensor.intake-policy-changed: changed the limits sensors are held against at intake: Confirmed by our own measurements",
  );
  expect((await sensorView(desk.technician, before!)).intake?.checks.map(({ verdict }) => verdict)).toEqual([
    "not-checked",
    "not-checked",
    "within",
    "within",
  ]);
});

it("refuses what is no limit, what changes nothing, and those who do not set limits", async () => {
  const before = [await intakePolicyView(manager), await auditSentences()];
  const fields = async (more: object) =>
    Object.keys((await refusalOf(change({ version: 2, ...more }))).fields ?? {});
  expect(await fields({ loopTolerancePercent: "0" })).toEqual(["loopTolerancePercent"]);
  expect(await fields({ insulationNew: "lots" })).toEqual(["insulationNew"]);
  expect(await fields({ resistivity: { ...typed.resistivity, K: "" } })).toEqual(["resistivity.K"]);
  expect(await fields({ reason: " " })).toEqual(["reason"]);
  expect(await refusalOf(change({ version: 2 }))).toMatchObject({ code: "rule" });
  expect(await refusalOf(change({ largestLoopOhm: "400" }))).toMatchObject({ code: "changed-meanwhile" });
  for (const actor of [desk.frontDesk, desk.technician, desk.northern.actor])
    expect(await refusalOf(change({ version: 2 }, actor))).toMatchObject({ code: "not-permitted" });
  expect([await intakePolicyView(manager), await auditSentences()]).toEqual(before);
});
