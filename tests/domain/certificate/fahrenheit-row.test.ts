import { expect, it } from "vitest";
import { fahrenheitRow } from "@/lib/domain/certificate/fahrenheit-row";
import { measuredPoint } from "../../support/evaluated-point";

/* The figures are invented; 1.8 and 32 are exact (NIST SP 811:2008, B.8, from memory), the products done by hand. */

const point = measuredPoint({
  ...{ sensor: "T-1", setpoint: "600", type: "K", celsius: 315.5555555555556, error: 0.53, rule: "guarded" },
});
const with_ = (more: Partial<typeof point>) => ({ ...point, ...more });

it("rounds U in °F to as many digits as in °C, and the rest to its last digit, from the unrounded figures", () => {
  const row = fahrenheitRow(
    with_({
      ...{ errorCelsius: 0.53, expandedCelsius: 0.9585, referenceCelsius: 315.1 },
      printed: { ...point.printed, expandedCelsius: "0.96", referenceCelsius: "315.10" },
    }),
    false,
  );
  // 1.8 × 0.9585 = 1.7253, 1.8 × 0.53 = 0.954, 1.8 × 315.1 + 32 = 599.18. From the printed 0.96 °C it would be 1.728.
  expect(row).toEqual({ reference: "599.18", error: "1.0", correction: "−1.0", expanded: "1.7" });
});

it("takes one digit of U where one is printed", () => {
  const row = fahrenheitRow(
    with_({
      ...{ errorCelsius: 0.53, expandedCelsius: 0.9585 },
      printed: { ...point.printed, expandedCelsius: "1" },
    }),
    false,
  );
  expect(row).toMatchObject({ error: "1", expanded: "2" });
});

it("states tolerance and limit where conformity is stated, the tolerance without rounding", () => {
  const conformity = {
    ...point.conformity,
    tolerance: { standard: "ASTM E230/E230M-23", class: "special", celsius: 1.1 },
    acceptanceCelsius: 0.1415,
    printed: { tolerance: "1.1", probability: null },
  };
  const row = fahrenheitRow(
    with_({
      ...{ conformity, errorCelsius: 0.53, expandedCelsius: 0.9585 },
      printed: { ...point.printed, expandedCelsius: "0.96" },
    }),
    true,
  );
  expect(row).toMatchObject({ tolerance: "± 1.98", acceptance: "± 0.255" });
});
