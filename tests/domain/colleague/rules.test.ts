import { expect, it } from "vitest";
import { decideColleagueActive, decideColleagueRoles } from "@/lib/domain/colleague/rules";
import { ColleagueRolesInput } from "@/lib/domain/colleague/schema";

const manager = { id: "m", active: true, roles: ["customer", "customer-manager"] };
const reader = { id: "r", active: true, roles: ["customer"] };

it("leaves a customer never without somebody who may invite", () => {
  expect(decideColleagueRoles(manager, ["customer"], 0)).toMatchObject({ refusal: { code: "rule" } });
  expect(decideColleagueRoles(manager, ["customer"], 1)).toMatchObject({ ok: true });
  expect(decideColleagueActive(manager, false, "other", 0)).toMatchObject({ refusal: { code: "rule" } });
  expect(decideColleagueActive(manager, false, "other", 1)).toMatchObject({ ok: true });
  // Whoever has no account any more is no manager that could be missed.
  expect(decideColleagueRoles({ ...manager, active: false }, ["customer"], 0)).toMatchObject({ ok: true });
});

it("lets nobody end their own account, and changes nothing twice", () => {
  expect(decideColleagueActive(reader, false, "r", 1)).toMatchObject({ refusal: { code: "rule" } });
  expect(decideColleagueActive(reader, true, "m", 1)).toMatchObject({ refusal: { code: "wrong-state" } });
  expect(decideColleagueRoles(reader, ["customer"], 1)).toMatchObject({ refusal: { code: "rule" } });
});

it("gives everybody reading, and no role of the laboratory", () => {
  const input = { id: "0f8fad5b-d9cb-469f-a165-70867728950e", version: 1 };
  expect(ColleagueRolesInput.parse({ ...input, roles: ["customer-manager"] }).roles).toEqual([
    "customer",
    "customer-manager",
  ]);
  expect(ColleagueRolesInput.parse({ ...input, roles: [] }).roles).toEqual(["customer"]);
  expect(ColleagueRolesInput.safeParse({ ...input, roles: ["quality-manager"] }).success).toBe(false);
});
