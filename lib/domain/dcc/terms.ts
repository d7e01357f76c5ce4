/**
 * Our own vocabulary of `refType`: nothing published names what a comparison of thermocouples yields. Its meanings stand
 * in every digital certificate we write, and no other term of this namespace may stand there.
 */
export const ownTerms = {
  contentHash: "SHA-256 over the RFC 8785 form of the certificate's content, lower-case hexadecimal.",
  authenticity: "Address at which anyone may check the certificate.",
  log: "Audit log of the laboratory at the signature: number of its last event, and that event's SHA-256.",
  setpoint: "Temperature ordered; the values of a row hold at it.",
  emf: "Emf of the thermocouple at the setpoint, its reference junction at 0 °C.",
  emfDeviation: "Emf minus the reference function of the type, at the setpoint.",
  correction: "Negative of the error, to be added to the indication.",
  conformityState:
    "pass, conditional-pass, conditional-fail, fail; not-decidable: U leaves no acceptance zone; no-tolerance-defined; no-statement: none was agreed.",
  conformityProbability: "Probability that the true error lies within the tolerance, as printed.",
  scope: "Whether a result lies inside or outside the laboratory's scope of accreditation.",
  source: "own: obtained by this laboratory; external: by the provider named in the statements.",
  referenceJunction: "Temperature of the reference junction during the measurement.",
  ambientTemperature:
    "Temperature of the room during the measurement, from the lowest to the highest recorded.",
  ambientHumidity:
    "Relative humidity of the room during the measurement, from the lowest to the highest recorded.",
  conditions: "Further conditions that influence the results.",
  set: "Whether results were obtained before or after annealing.",
  coefficient: "Coefficient of D(t), the deviation of the emf in µV for t in °C.",
  corrections: "Corrections by temperature, from the deviation function.",
  change: "Error after annealing minus error as received.",
  lot: "Average and spread of the errors of several items.",
  budget:
    "Standard uncertainties of the lines of one result's budget, as they act on the error, and their combination.",
  budgetLine: "Names of the lines of a budget, with _ for each blank.",
  distribution: "Distribution of each line of a budget.",
  share: "Share of each line in the variance of the result.",
  statement: "A statement of ISO/IEC 17025:2017, 7.8, by its clause.",
  opinion: "An opinion or interpretation, 7.8.7; no result.",
} as const;

export type OwnTerm = keyof typeof ownTerms;

/** Defined only where they stand: a certificate that tells nothing of the room is written as it was before they were known. */
export const termsOfTheRoom: ReadonlySet<OwnTerm> = new Set(["ambientTemperature", "ambientHumidity"]);
export const ownNamespace = "emfolio";
export const own = (term: OwnTerm): string => `${ownNamespace}_${term}`;

/** The namespaces that a certificate of ours defines. */
export const definedNamespaces: readonly string[] = ["basic", "gp", ownNamespace];
