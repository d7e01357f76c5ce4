import { publishedTable } from "./published-value";
import type { referenceDatasets } from "./strd-datasets";

type Certified = {
  readonly dataset: keyof typeof referenceDatasets;
  readonly quantity: "estimate" | "deviation" | "residual-deviation" | "residual-squares";
  /** Which coefficient. */
  readonly index: number;
};

/** Certified to 15 digits; float64 keeps what the condition of the problem leaves: nine digits are asked for here. */
const digits = (certified: number) => ({
  absolute: 1e-9 * Math.abs(certified),
  reason: "certified to 15 digits by multiple precision; nine are asked of float64",
});

export const strdRegression = publishedTable<Certified>(
  "NIST StRD, linear regression",
  {
    document: "NIST Statistical Reference Datasets, linear regression, certified values",
    readAt:
      "shgalus/shg: tests of OLS against StRD (include/shg/strdlr.h); http://itl.nist.gov/div898/strd/lls/lls_info.shtml",
    provenance: "read",
  },
  [
    [
      { dataset: "Norris", quantity: "estimate", index: 0 },
      "Norris: estimate of coefficient 0",
      "-0.262323073774029",
      digits(-0.262323073774029),
    ],
    [
      { dataset: "Norris", quantity: "deviation", index: 0 },
      "Norris: standard deviation of coefficient 0",
      "0.232818234301152",
      digits(0.232818234301152),
    ],
    [
      { dataset: "Norris", quantity: "estimate", index: 1 },
      "Norris: estimate of coefficient 1",
      "1.00211681802045",
      digits(1.00211681802045),
    ],
    [
      { dataset: "Norris", quantity: "deviation", index: 1 },
      "Norris: standard deviation of coefficient 1",
      "0.429796848199937E-03",
      digits(0.429796848199937e-3),
    ],
    [
      { dataset: "Norris", quantity: "residual-deviation", index: 0 },
      "Norris: residual standard deviation",
      "0.884796396144373",
      digits(0.884796396144373),
    ],
    [
      { dataset: "Norris", quantity: "residual-squares", index: 0 },
      "Norris: residual sum of squares",
      "26.6173985294224",
      digits(26.6173985294224),
    ],
    [
      { dataset: "Pontius", quantity: "estimate", index: 0 },
      "Pontius: estimate of coefficient 0",
      "0.673565789473684E-03",
      digits(0.673565789473684e-3),
    ],
    [
      { dataset: "Pontius", quantity: "deviation", index: 0 },
      "Pontius: standard deviation of coefficient 0",
      "0.107938612033077E-03",
      digits(0.107938612033077e-3),
    ],
    [
      { dataset: "Pontius", quantity: "estimate", index: 1 },
      "Pontius: estimate of coefficient 1",
      "0.732059160401003E-06",
      digits(0.732059160401003e-6),
    ],
    [
      { dataset: "Pontius", quantity: "deviation", index: 1 },
      "Pontius: standard deviation of coefficient 1",
      "0.157817399981659E-09",
      digits(0.157817399981659e-9),
    ],
    [
      { dataset: "Pontius", quantity: "estimate", index: 2 },
      "Pontius: estimate of coefficient 2",
      "-0.316081871345029E-14",
      digits(-0.316081871345029e-14),
    ],
    [
      { dataset: "Pontius", quantity: "deviation", index: 2 },
      "Pontius: standard deviation of coefficient 2",
      "0.486652849992036E-16",
      digits(0.486652849992036e-16),
    ],
    [
      { dataset: "Pontius", quantity: "residual-deviation", index: 0 },
      "Pontius: residual standard deviation",
      "0.205177424076185E-03",
      digits(0.205177424076185e-3),
    ],
    [
      { dataset: "NoInt1", quantity: "estimate", index: 0 },
      "NoInt1: estimate of coefficient 0",
      "2.07438016528926",
      digits(2.07438016528926),
    ],
    [
      { dataset: "NoInt1", quantity: "deviation", index: 0 },
      "NoInt1: standard deviation of coefficient 0",
      "0.165289256198347E-01",
      digits(0.165289256198347e-1),
    ],
    [
      { dataset: "NoInt1", quantity: "residual-deviation", index: 0 },
      "NoInt1: residual standard deviation",
      "3.56753034006338",
      digits(3.56753034006338),
    ],
    [
      { dataset: "NoInt2", quantity: "estimate", index: 0 },
      "NoInt2: estimate of coefficient 0",
      "0.727272727272727",
      digits(0.727272727272727),
    ],
    [
      { dataset: "NoInt2", quantity: "deviation", index: 0 },
      "NoInt2: standard deviation of coefficient 0",
      "0.420827318078432E-01",
      digits(0.420827318078432e-1),
    ],
    [
      { dataset: "NoInt2", quantity: "residual-deviation", index: 0 },
      "NoInt2: residual standard deviation",
      "0.369274472937998",
      digits(0.369274472937998),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 0 },
      "Longley: estimate of coefficient 0",
      "-3482258.63459582",
      digits(-3482258.63459582),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 0 },
      "Longley: standard deviation of coefficient 0",
      "890420.383607373",
      digits(890420.383607373),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 1 },
      "Longley: estimate of coefficient 1",
      "15.0618722713733",
      digits(15.0618722713733),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 1 },
      "Longley: standard deviation of coefficient 1",
      "84.9149257747669",
      digits(84.9149257747669),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 2 },
      "Longley: estimate of coefficient 2",
      "-0.358191792925910E-01",
      digits(-0.35819179292591e-1),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 2 },
      "Longley: standard deviation of coefficient 2",
      "0.334910077722432E-01",
      digits(0.334910077722432e-1),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 3 },
      "Longley: estimate of coefficient 3",
      "-2.02022980381683",
      digits(-2.02022980381683),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 3 },
      "Longley: standard deviation of coefficient 3",
      "0.488399681651699",
      digits(0.488399681651699),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 4 },
      "Longley: estimate of coefficient 4",
      "-1.03322686717359",
      digits(-1.03322686717359),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 4 },
      "Longley: standard deviation of coefficient 4",
      "0.214274163161675",
      digits(0.214274163161675),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 5 },
      "Longley: estimate of coefficient 5",
      "-0.511041056535807E-01",
      digits(-0.511041056535807e-1),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 5 },
      "Longley: standard deviation of coefficient 5",
      "0.226073200069370",
      digits(0.22607320006937),
    ],
    [
      { dataset: "Longley", quantity: "estimate", index: 6 },
      "Longley: estimate of coefficient 6",
      "1829.15146461355",
      digits(1829.15146461355),
    ],
    [
      { dataset: "Longley", quantity: "deviation", index: 6 },
      "Longley: standard deviation of coefficient 6",
      "455.478499142212",
      digits(455.478499142212),
    ],
    [
      { dataset: "Longley", quantity: "residual-deviation", index: 0 },
      "Longley: residual standard deviation",
      "304.854073561965",
      digits(304.854073561965),
    ],
    [
      { dataset: "Wampler4", quantity: "deviation", index: 0 },
      "Wampler4: standard deviation of coefficient 0",
      "215232.624678170",
      digits(215232.62467817),
    ],
    [
      { dataset: "Wampler4", quantity: "deviation", index: 1 },
      "Wampler4: standard deviation of coefficient 1",
      "236355.173469681",
      digits(236355.173469681),
    ],
    [
      { dataset: "Wampler4", quantity: "deviation", index: 2 },
      "Wampler4: standard deviation of coefficient 2",
      "77934.3524331583",
      digits(77934.3524331583),
    ],
    [
      { dataset: "Wampler4", quantity: "deviation", index: 3 },
      "Wampler4: standard deviation of coefficient 3",
      "10147.5507550350",
      digits(10147.550755035),
    ],
    [
      { dataset: "Wampler4", quantity: "deviation", index: 4 },
      "Wampler4: standard deviation of coefficient 4",
      "564.566512170752",
      digits(564.566512170752),
    ],
    [
      { dataset: "Wampler4", quantity: "residual-deviation", index: 0 },
      "Wampler4: residual standard deviation",
      "236014.502379268",
      digits(236014.502379268),
    ],
  ],
);
