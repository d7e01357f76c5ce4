import { expect, it } from "vitest";
import { staffEvents } from "@/lib/domain/staff/events";
import { customerRoles } from "@/lib/domain/staff/roles";
import { rolesText } from "@/lib/domain/staff/roles-text";

it("says each word of a person's roles once", () => {
  expect(rolesText(customerRoles)).toBe("Customer, may order and answer, may invite colleagues");
  expect(rolesText(["customer-manager"])).toBe("Customer, may invite colleagues");
  expect(rolesText(["signatory", "quality-manager"])).toBe("Signatory, Quality manager");
  expect(rolesText(["once-a-role"])).toBe("once-a-role");
  expect(rolesText([])).toBe("");
});

it("says them so in the log too", () => {
  const spoken = JSON.stringify(staffEvents.rolesChanged.sentence({ from: [], to: [...customerRoles] }));
  expect(spoken).toContain("customer, may order and answer, may invite colleagues");
});
