import { publishedTable } from "./published-value";

type Range = {
  readonly type: "B" | "E" | "J" | "K" | "N" | "R" | "S" | "T";
  /** Which of the type's inverse polynomials, in the order of the table. */
  readonly index: number;
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly edge: "lowest" | "highest";
};

const outwards = (lastDigit: number) => ({
  absolute: lastDigit,
  reason: "NIST rounds the ends of the band outwards",
});

/** Error in °C of NIST's approximate inverse functions against the exact inverse of the direct ones. */
export const nistInverseBands = publishedTable<Range>(
  "NIST SRD 60, error range of the inverse functions",
  {
    document: "NIST ITS-90 Thermocouple Database (SRD 60), coefficients of approximate inverse functions",
    readAt: "https://srdata.nist.gov/its90/download/allcoeff.tab",
    provenance: "read",
  },
  [
    [
      { type: "B", index: 0, fromCelsius: 250, toCelsius: 700, edge: "lowest" },
      "type B, 250 to 700 °C, lowest",
      "-0.02",
      outwards(1e-2),
    ],
    [
      { type: "B", index: 0, fromCelsius: 250, toCelsius: 700, edge: "highest" },
      "type B, 250 to 700 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
    [
      { type: "B", index: 1, fromCelsius: 700, toCelsius: 1820, edge: "lowest" },
      "type B, 700 to 1820 °C, lowest",
      "-0.01",
      outwards(1e-2),
    ],
    [
      { type: "B", index: 1, fromCelsius: 700, toCelsius: 1820, edge: "highest" },
      "type B, 700 to 1820 °C, highest",
      "0.02",
      outwards(1e-2),
    ],
    [
      { type: "E", index: 0, fromCelsius: -200, toCelsius: 0, edge: "highest" },
      "type E, -200 to 0 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
    [
      { type: "E", index: 1, fromCelsius: 0, toCelsius: 1000, edge: "highest" },
      "type E, 0 to 1000 °C, highest",
      "0.02",
      outwards(1e-2),
    ],
    [
      { type: "J", index: 0, fromCelsius: -210, toCelsius: 0, edge: "highest" },
      "type J, -210 to 0 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
    [
      { type: "J", index: 1, fromCelsius: 0, toCelsius: 760, edge: "highest" },
      "type J, 0 to 760 °C, highest",
      "0.04",
      outwards(1e-2),
    ],
    [
      { type: "J", index: 2, fromCelsius: 760, toCelsius: 1200, edge: "highest" },
      "type J, 760 to 1200 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
    [
      { type: "K", index: 0, fromCelsius: -200, toCelsius: 0, edge: "lowest" },
      "type K, -200 to 0 °C, lowest",
      "-0.02",
      outwards(1e-2),
    ],
    [
      { type: "K", index: 0, fromCelsius: -200, toCelsius: 0, edge: "highest" },
      "type K, -200 to 0 °C, highest",
      "0.04",
      outwards(1e-2),
    ],
    [
      { type: "K", index: 1, fromCelsius: 0, toCelsius: 500, edge: "lowest" },
      "type K, 0 to 500 °C, lowest",
      "-0.05",
      outwards(1e-2),
    ],
    [
      { type: "K", index: 1, fromCelsius: 0, toCelsius: 500, edge: "highest" },
      "type K, 0 to 500 °C, highest",
      "0.04",
      outwards(1e-2),
    ],
    [
      { type: "K", index: 2, fromCelsius: 500, toCelsius: 1372, edge: "lowest" },
      "type K, 500 to 1372 °C, lowest",
      "-0.05",
      outwards(1e-2),
    ],
    [
      { type: "K", index: 2, fromCelsius: 500, toCelsius: 1372, edge: "highest" },
      "type K, 500 to 1372 °C, highest",
      "0.06",
      outwards(1e-2),
    ],
    [
      { type: "N", index: 0, fromCelsius: -200, toCelsius: 0, edge: "highest" },
      "type N, -200 to 0 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
    [
      { type: "N", index: 1, fromCelsius: 0, toCelsius: 600, edge: "highest" },
      "type N, 0 to 600 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
    [
      { type: "N", index: 2, fromCelsius: 600, toCelsius: 1300, edge: "highest" },
      "type N, 600 to 1300 °C, highest",
      "0.02",
      outwards(1e-2),
    ],
    [
      { type: "R", index: 0, fromCelsius: -50, toCelsius: 250, edge: "lowest" },
      "type R, -50 to 250 °C, lowest",
      "-0.02",
      outwards(1e-2),
    ],
    [
      { type: "R", index: 0, fromCelsius: -50, toCelsius: 250, edge: "highest" },
      "type R, -50 to 250 °C, highest",
      "0.02",
      outwards(1e-2),
    ],
    [
      { type: "R", index: 1, fromCelsius: 250, toCelsius: 1200, edge: "lowest" },
      "type R, 250 to 1200 °C, lowest",
      "-0.005",
      outwards(1e-3),
    ],
    [
      { type: "R", index: 1, fromCelsius: 250, toCelsius: 1200, edge: "highest" },
      "type R, 250 to 1200 °C, highest",
      "0.005",
      outwards(1e-3),
    ],
    [
      { type: "R", index: 2, fromCelsius: 1064, toCelsius: 1664.5, edge: "lowest" },
      "type R, 1064 to 1664.5 °C, lowest",
      "-0.0005",
      outwards(1e-4),
    ],
    [
      { type: "R", index: 2, fromCelsius: 1064, toCelsius: 1664.5, edge: "highest" },
      "type R, 1064 to 1664.5 °C, highest",
      "0.001",
      outwards(1e-3),
    ],
    [
      { type: "R", index: 3, fromCelsius: 1664.5, toCelsius: 1768.1, edge: "lowest" },
      "type R, 1664.5 to 1768.1 °C, lowest",
      "-0.001",
      outwards(1e-3),
    ],
    [
      { type: "R", index: 3, fromCelsius: 1664.5, toCelsius: 1768.1, edge: "highest" },
      "type R, 1664.5 to 1768.1 °C, highest",
      "0.002",
      outwards(1e-3),
    ],
    [
      { type: "S", index: 0, fromCelsius: -50, toCelsius: 250, edge: "lowest" },
      "type S, -50 to 250 °C, lowest",
      "-0.02",
      outwards(1e-2),
    ],
    [
      { type: "S", index: 0, fromCelsius: -50, toCelsius: 250, edge: "highest" },
      "type S, -50 to 250 °C, highest",
      "0.02",
      outwards(1e-2),
    ],
    [
      { type: "S", index: 1, fromCelsius: 250, toCelsius: 1200, edge: "lowest" },
      "type S, 250 to 1200 °C, lowest",
      "-0.01",
      outwards(1e-2),
    ],
    [
      { type: "S", index: 1, fromCelsius: 250, toCelsius: 1200, edge: "highest" },
      "type S, 250 to 1200 °C, highest",
      "0.01",
      outwards(1e-2),
    ],
    [
      { type: "S", index: 2, fromCelsius: 1064, toCelsius: 1664.5, edge: "lowest" },
      "type S, 1064 to 1664.5 °C, lowest",
      "-0.0002",
      outwards(1e-4),
    ],
    [
      { type: "S", index: 2, fromCelsius: 1064, toCelsius: 1664.5, edge: "highest" },
      "type S, 1064 to 1664.5 °C, highest",
      "0.0002",
      outwards(1e-4),
    ],
    [
      { type: "S", index: 3, fromCelsius: 1664.5, toCelsius: 1768.1, edge: "lowest" },
      "type S, 1664.5 to 1768.1 °C, lowest",
      "-0.002",
      outwards(1e-3),
    ],
    [
      { type: "S", index: 3, fromCelsius: 1664.5, toCelsius: 1768.1, edge: "highest" },
      "type S, 1664.5 to 1768.1 °C, highest",
      "0.002",
      outwards(1e-3),
    ],
    [
      { type: "T", index: 0, fromCelsius: -200, toCelsius: 0, edge: "highest" },
      "type T, -200 to 0 °C, highest",
      "0.04",
      outwards(1e-2),
    ],
    [
      { type: "T", index: 1, fromCelsius: 0, toCelsius: 400, edge: "highest" },
      "type T, 0 to 400 °C, highest",
      "0.03",
      outwards(1e-2),
    ],
  ],
);
