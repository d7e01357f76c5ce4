import { publishedTable } from "./published-value";

const document = "IEC 751:1983 with amendment 2:1995 (the function of IEC 60751:2008 and 2022)";

/** R in ohm of a nominal 100 ohm thermometer. Input: °C. The table read there has 35.34 at -160 °C: a misprint, left out. */
export const iec60751Resistances = publishedTable<number>(
  "IEC 60751, resistances",
  { document, readAt: "http://www.sensorsci.com/reference.htm", provenance: "read" },
  [
    [-200, "-200 °C", "18.52"],
    [-190, "-190 °C", "22.83"],
    [-150, "-150 °C", "39.72"],
    [-120, "-120 °C", "52.11"],
    [-100, "-100 °C", "60.26"],
    [-80, "-80 °C", "68.33"],
    [-50, "-50 °C", "80.31"],
    [-30, "-30 °C", "88.22"],
    [-10, "-10 °C", "96.09"],
    [0, "0 °C", "100.00"],
    [10, "10 °C", "103.90"],
    [50, "50 °C", "119.40"],
    [100, "100 °C", "138.51"],
    [150, "150 °C", "157.33"],
    [200, "200 °C", "175.86"],
    [250, "250 °C", "194.10"],
    [300, "300 °C", "212.05"],
    [350, "350 °C", "229.72"],
    [400, "400 °C", "247.09"],
    [450, "450 °C", "264.18"],
    [500, "500 °C", "280.98"],
    [550, "550 °C", "297.49"],
    [600, "600 °C", "313.71"],
  ],
);

/** Half-width in °C; the classes reached further down and up than those of 2008. Input: class and °C. */
export const iec60751Tolerances = publishedTable<readonly ["A" | "B", number]>(
  "IEC 60751, tolerances",
  {
    document,
    readAt:
      "http://www.sensorsci.com/reference.htm, http://www.dwmai.com/productInformation/referenceTables.php",
    provenance: "read",
  },
  [
    [["A", -100], "class A at -100 °C", "0.35"],
    [["A", 0], "class A at 0 °C", "0.15"],
    [["A", 100], "class A at 100 °C", "0.35"],
    [["A", 200], "class A at 200 °C", "0.55"],
    [["A", 300], "class A at 300 °C", "0.75"],
    [["A", 400], "class A at 400 °C", "0.95"],
    [["B", 0], "class B at 0 °C, 0.3 + 0.005|t|", "0.3"],
  ],
);
