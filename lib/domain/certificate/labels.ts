import type { CertificateRow, CertificateStandard } from "./content";

/** Words for a state of conformity, as on screen and on paper. */
export const conformityLabels: Readonly<Record<CertificateRow["conformity"]["state"], string>> = {
  pass: "Pass",
  "conditional-pass": "Conditional pass",
  "conditional-fail": "Conditional fail",
  fail: "Fail",
  "not-decidable": "Not decidable",
  "no-tolerance-defined": "No tolerance defined",
  "no-statement": "No statement",
};

export const rowStateLabels: Readonly<Record<CertificateRow["state"], string>> = {
  measured: "Measured",
  invalid: "Invalid",
  "not-reached": "Not reached",
};

export const standardRoleLabels: Readonly<Record<CertificateStandard["role"], string>> = {
  reference: "Reference thermocouple",
  voltmeter: "Voltmeter",
  scanner: "Scanner",
  junction: "Reference junction",
};

export const protectionLabels: Readonly<Record<string, string>> = {
  "bare-wire": "Bare wire",
  "alumina-sheath": "Closed alumina sheath",
  "metal-sheath": "Metal sheath",
  other: "Other",
};

/** Routes of ILAC-P10:07/2020 in plain words. */
export const routeLabels: Readonly<Record<string, string>> = {
  nmi: "National metrology institute, CIPM MRA",
  accredited: "Accredited laboratory, ILAC arrangement",
  "in-house": "Calibrated in this laboratory",
  other: "Other route, justified in the laboratory's file",
};
