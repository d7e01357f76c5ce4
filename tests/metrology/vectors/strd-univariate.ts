import { publishedTable } from "./published-value";

/** One value, then 500 pairs about it: NumAcc2 to 4, built to show cancellation. */
const pairs = (middle: number, low: number, high: number): readonly number[] => [
  middle,
  ...[...Array(500).keys()].flatMap(() => [low, high]),
];

/** Data sets of NIST's Statistical Reference Datasets, univariate. */
export const univariateDatasets = {
  Michelso: [
    299.85, 299.74, 299.9, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300, 299.98, 299.93,
    299.65, 299.76, 299.81, 300, 300, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.8, 299.85,
    299.88, 299.9, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.8, 299.79, 299.76, 299.8,
    299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91, 299.85,
    299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.8, 299.77,
    299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72, 299.84, 299.85, 299.85,
    299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87, 299.87,
    299.81, 299.74, 299.81, 299.94, 299.95, 299.8, 299.81, 299.87,
  ],
  Mavro: [
    2.0018, 2.0017, 2.0018, 2.0019, 2.0018, 2.0017, 2.0015, 2.0014, 2.0015, 2.0015, 2.0017, 2.0018, 2.0018,
    2.0019, 2.0019, 2.0021, 2.002, 2.0016, 2.0014, 2.0013, 2.0013, 2.0015, 2.0015, 2.0016, 2.0015, 2.0014,
    2.0013, 2.0014, 2.0015, 2.0014, 2.0015, 2.0016, 2.0015, 2.0016, 2.0019, 2.002, 2.002, 2.0021, 2.0022,
    2.0023, 2.0024, 2.0025, 2.0027, 2.0026, 2.0026, 2.0026, 2.0027, 2.0026, 2.0025, 2.0024,
  ],
  Lew: [
    -213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559, 92, -21,
    -579, -52, 99, -543, -175, 162, -457, -346, 204, -300, -474, 164, -107, -572, -8, 83, -541, -224, 180,
    -420, -374, 201, -236, -531, 83, 27, -564, -112, 131, -507, -254, 199, -311, -495, 143, -46, -579, -90,
    136, -472, -338, 202, -287, -477, 169, -124, -568, 17, 48, -568, -135, 162, -430, -422, 172, -74, -577,
    -13, 92, -534, -243, 194, -355, -465, 156, -81, -578, -64, 139, -449, -384, 193, -198, -538, 110, -44,
    -577, -6, 66, -552, -164, 161, -460, -344, 205, -281, -504, 134, -28, -576, -118, 156, -437, -381, 200,
    -220, -540, 83, 11, -568, -160, 172, -414, -408, 188, -125, -572, -32, 139, -492, -321, 205, -262, -504,
    142, -83, -574, 0, 48, -571, -106, 137, -501, -266, 190, -391, -406, 194, -186, -553, 83, -13, -577, -49,
    103, -515, -280, 201, 300, -506, 131, -45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533,
    -235, 187, -372, -442, 182, -147, -566, 25, 68, -535, -244, 194, -351, -463, 174, -125, -570, 15, 72,
    -550, -190, 172, -424, -385, 198, -218, -536, 96,
  ],
  NumAcc1: [10000001, 10000003, 10000002],
  NumAcc2: pairs(1.2, 1.1, 1.3),
  NumAcc3: pairs(1000000.2, 1000000.1, 1000000.3),
  NumAcc4: pairs(10000000.2, 10000000.1, 10000000.3),
} as const;

type Certified = {
  readonly dataset: keyof typeof univariateDatasets;
  readonly quantity: "mean" | "deviation";
};

/** NumAcc3 and 4: the data themselves are off by a rounding of float64, 1e-9 of the deviation and more. */
const digits = (certified: number, relative: number) => ({
  absolute: relative * Math.abs(certified),
  reason: "certified exactly or to 15 digits; the data of NumAcc are not exact in float64",
});

export const strdUnivariate = publishedTable<Certified>(
  "NIST StRD, univariate statistics",
  {
    document: "NIST Statistical Reference Datasets, univariate summary statistics, certified values",
    readAt: "ab9sq/Rqualification: R/univariateData.R, R/univariate.R",
    provenance: "read",
  },
  [
    [
      { dataset: "Michelso", quantity: "mean" },
      "Michelso: mean",
      "299.852400000000",
      digits(299.8524, 1e-14),
    ],
    [
      { dataset: "Michelso", quantity: "deviation" },
      "Michelso: standard deviation",
      "0.0790105478190518",
      digits(0.0790105478190518, 1e-13),
    ],
    [{ dataset: "Mavro", quantity: "mean" }, "Mavro: mean", "2.00185600000000", digits(2.001856, 1e-14)],
    [
      { dataset: "Mavro", quantity: "deviation" },
      "Mavro: standard deviation",
      "0.000429123454003053",
      digits(0.000429123454003053, 1e-13),
    ],
    [{ dataset: "Lew", quantity: "mean" }, "Lew: mean", "-177.435000000000", digits(-177.435, 1e-14)],
    [
      { dataset: "Lew", quantity: "deviation" },
      "Lew: standard deviation",
      "277.332168044316",
      digits(277.332168044316, 1e-13),
    ],
    [{ dataset: "NumAcc1", quantity: "mean" }, "NumAcc1: mean", "10000002", digits(10000002, 1e-14)],
    [{ dataset: "NumAcc1", quantity: "deviation" }, "NumAcc1: standard deviation", "1", digits(1, 1e-13)],
    [{ dataset: "NumAcc2", quantity: "mean" }, "NumAcc2: mean", "1.2", digits(1.2, 1e-14)],
    [{ dataset: "NumAcc2", quantity: "deviation" }, "NumAcc2: standard deviation", "0.1", digits(0.1, 1e-13)],
    [{ dataset: "NumAcc3", quantity: "mean" }, "NumAcc3: mean", "1000000.2", digits(1000000.2, 1e-14)],
    [{ dataset: "NumAcc3", quantity: "deviation" }, "NumAcc3: standard deviation", "0.1", digits(0.1, 1e-9)],
    [{ dataset: "NumAcc4", quantity: "mean" }, "NumAcc4: mean", "10000000.2", digits(10000000.2, 1e-14)],
    [{ dataset: "NumAcc4", quantity: "deviation" }, "NumAcc4: standard deviation", "0.1", digits(0.1, 1e-8)],
  ],
);
