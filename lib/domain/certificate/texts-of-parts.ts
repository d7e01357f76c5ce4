/** Sentences of certificates that carry several sets or sensors, or what was asked for beyond the points. */

export type Anneal = {
  readonly celsius: number;
  readonly hours: number;
  readonly manner: string;
  readonly performedOn: string;
};

/** 7.8.4.1 d: what was done to the item, between the results before it and those after it. */
export const annealed = ({ celsius, hours, manner, performedOn }: Anneal): string =>
  `Annealed by this laboratory on ${performedOn} at ${celsius} °C for ${hours} h (${manner}).`;

export const beforeAndAfter =
  "Results marked “as received” were obtained before the annealing, results marked “after annealing” after it; the change between them is stated. Otherwise the thermocouple was neither adjusted nor repaired.";

export const onlyAfter =
  "The results were obtained after the annealing, as ordered; no results as received were ordered. Otherwise the thermocouple was neither adjusted nor repaired.";

/** Instead of "in the condition in which it was received". */
export const relatesAnnealed =
  "The results relate only to the item described on this certificate, in the condition stated with them: as received, or after the annealing described.";

export const setsStatement = "Each table of results holds for the item, the set and the run named above it.";

export const changeStatement =
  "Change: error after annealing minus error as received. Its U (k = 2) is the root of the sum of squares of both; where the same references served both, the uncertainty of their certificates drops out of the difference.";

export const lotStatement =
  "Average: arithmetic mean of the errors of the items measured. Spread: half of the range, (largest − smallest) / 2. " +
  "Both describe the measured items alone; nothing is stated of the rest of the lot or roll, nor at other temperatures.";

export const evidenceOnRequest =
  "The evidence file with every reading that these results rest on can be had from the laboratory under the number of this certificate.";

export const atCustomerSite = (address: string): string =>
  `At the customer's site${address ? `: ${address}` : ""}`;

/** 7.8.2.1 p */
export const fromProvider = (provider: string): string =>
  `The results of this certificate were obtained by an external provider: ${provider}.`;
