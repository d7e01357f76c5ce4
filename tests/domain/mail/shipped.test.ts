import { expect, it } from "vitest";
import { shippedLetter } from "@/lib/domain/mail/letters/shipped";

const bodyOf = (sensors: number, unmeasured: number) =>
  shippedLetter({
    ...{ contactName: "Nora North", laboratory: "The laboratory", orderNumber: "O-2026-0001" },
    ...{ shipmentNumber: "S-2026-0001", sensors, unmeasured, carrier: "", reference: "" },
    rest: { remaining: 0, finished: 0 },
  }).body;

it("says how many of a parcel were not measured", () => {
  expect(bodyOf(3, 0)).not.toContain("measured");
  expect(bodyOf(3, 1)).toContain("1 of them was not measured and has no certificate.");
  expect(bodyOf(3, 2)).toContain("2 of them were not measured and have no certificates.");
  expect(bodyOf(3, 3)).toContain("None of them was measured");
  expect(bodyOf(1, 1)).toContain("It was not measured and has no certificate.");
});
