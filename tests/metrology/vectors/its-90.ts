import { publishedTable, publishedValues } from "./published-value";

/** W_r at the defining fixed points. Input: kelvin. */
export const its90Ratios = publishedTable<number>(
  "ITS-90, table 1",
  {
    document: "H. Preston-Thomas, The International Temperature Scale of 1990, Metrologia 27 (1990) 3",
    readAt: "http://its-90.com/table1.html",
    provenance: "read",
  },
  [
    [13.8033, "e-H2 triple point", "0.00119007"],
    [24.5561, "Ne triple point", "0.00844974"],
    [54.3584, "O2 triple point", "0.09171804"],
    [83.8058, "Ar triple point", "0.21585975"],
    [234.3156, "Hg triple point", "0.84414211"],
    [273.16, "H2O triple point", "1.00000000"],
    [302.9146, "Ga melting point", "1.11813889"],
    [429.7485, "In freezing point", "1.60980185"],
    [505.078, "Sn freezing point", "1.89279768"],
    [692.677, "Zn freezing point", "2.56891730"],
    [933.473, "Al freezing point", "3.37600860"],
    [1234.93, "Ag freezing point", "4.28642053"],
  ],
);

const sevenDecimals = "the certificate prints W to seven decimals and computes with more";

/** W as printed in the same certificate, from which its coefficients follow. */
export const sprtCertificateRatios = { Hg: 0.8441779, Ga: 1.1181014 } as const;

/** Subrange 3.3.3 of a specimen certificate of a standard platinum thermometer. */
export const sprtCertificate = publishedValues(
  "SPRT certificate, ITS-90 3.3.3",
  {
    document: "ITS-90 calibration certificate, specimen of a 25 ohm standard platinum thermometer, 2004",
    readAt: "http://www.isotech.co.uk/icarus/samplecertlong.htm",
    provenance: "read",
  },
  {
    a: ["page 2, A of 3.3.3", "-2.796694757957740e-004", { absolute: 4e-7, reason: sevenDecimals }],
    b: ["page 2, B of 3.3.3", "-3.199472366290438e-004", { absolute: 3e-6, reason: sevenDecimals }],
  },
);
