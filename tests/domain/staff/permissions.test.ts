import { describe, expect, it } from "vitest";
import { may, type Permission, permissions } from "@/lib/domain/staff/permissions";
import { type Role, roles } from "@/lib/domain/staff/roles";

// Written out a second time, by hand: whoever changes the policy changes it twice, knowingly.
const d = "front-desk";
const t = "technician";
const s = "signatory";
const q = "quality-manager";
const expected: Readonly<Record<Permission, readonly Role[]>> = {
  "laboratory.read": [d, t, s, q],
  "laboratory.configure": [q],
  "scope.record": [q],
  "seal.manage": [q],
  "procedure.draft": [s, q],
  "procedure.approve": [s, q],
  "person.read": [q],
  "person.manage": [q],
  "person.authorise": [q],
  "customer.record": [d, q],
  "order.record": [d, q],
  "order.accept": [d, q],
  "order.note": [d, t, s, q],
  "price.record": [d, q],
  "invoicing.record": [d, q],
  "sensor.receive": [d, t],
  "sensor.release": [d],
  "hold.place": [d, t, s, q],
  "hold.release": [d, q, s],
  "custody.record": [d, t, q],
  "storage.configure": [d, q],
  "nonconformity.open": [d, t, s, q],
  "nonconformity.decide": [s, q],
  "equipment.record": [t, q],
  "calibration.record": [q],
  "calibration.accept": [s, q],
  "provider.record": [q],
  "provider-report.record": [d, t, q],
  "provider-report.decide": [s, q],
  "furnace.record": [t, q],
  "furnace.accept": [s, q],
  "run.perform": [t],
  "run.authorise-repeat": [s, q],
  "gate.override": [t, s, q],
  "evidence.export": [t, s, q],
  "review.read": [s, q, t],
  "review.decide": [s],
  "opinion.write": [s, q],
  "review.second-look": [s, q],
  "certificate.read": [d, t, s, q],
  "certificate.amend": [s, q],
  "certificate.withdraw": [s, q],
  "audit.read": [s, q],
  "mail.manage": ["quality-manager"],
  "portal.read": ["customer"],
  "portal.order": ["customer-orderer"],
  "portal.manage": ["customer-manager"],
};

describe("the permission table", () => {
  it("names exactly these permissions", () => {
    expect(Object.keys(permissions).toSorted()).toEqual(Object.keys(expected).toSorted());
  });

  it.each(Object.keys(expected) as Permission[])("%s is held by these roles and no other", (permission) => {
    const holders = roles.filter((role) => may([role], permission));
    expect(holders.toSorted()).toEqual([...expected[permission]].toSorted());
  });

  it("gives somebody with several roles what each of them gives, and nobody without a role anything", () => {
    expect(may(["technician", "signatory"], "review.decide")).toBe(true);
    expect(may(["technician", "signatory"], "run.perform")).toBe(true);
    expect(may(["technician", "signatory"], "person.manage")).toBe(false);
    for (const permission of Object.keys(permissions) as Permission[])
      expect(may([], permission)).toBe(false);
  });

  it.each(["constructor", "__proto__", "toString", "hasOwnProperty", "signed-in", "system", ""])(
    "knows no permission of the made-up name %j",
    (madeUp) => {
      expect(may([...roles], madeUp as Permission)).toBe(false);
    },
  );
});
