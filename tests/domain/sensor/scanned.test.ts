import { expect, it } from "vitest";
import { scanned } from "@/lib/domain/sensor/scanned";

it.each([
  ["T-000123", "T-000123"],
  [" t-000123\r\n", "T-000123"],
  ["http://127.0.0.1:3000/sensors/T-000123", "T-000123"],
  ["https://calibration.example/sensors/T-000123/", "T-000123"],
  // Typed by a scanner set to another country's keyboard.
  ["httpsÖ--calibration.example-sensors-Tß000123", "T-000123"],
])("%j is the label of a sensor", (text, tag) => {
  expect(scanned(text)).toEqual({ kind: "tag", tag });
});

it.each(["AT-000123", "T-0001234", "T-00012", "XT000123", "4711", "K 12/7"])("%j is a serial", (serial) => {
  expect(scanned(serial)).toEqual({ kind: "serial", serial });
});

it("nothing is nothing, and what cannot be seen is refused by its name", () => {
  expect(scanned("  \t")).toEqual({ kind: "nothing" });
  expect(scanned("A\u200b1")).toMatchObject({
    kind: "refused",
    message: expect.stringContaining("zero-width space"),
  });
  expect(scanned("x".repeat(301)).kind).toBe("refused");
});
