import { label } from "./catalogue/catalogue";
import type { CertificateRow, CertificateStandard } from "./content";

/** Words for a state of conformity, as on screen and on paper, in English; in another language from the catalogue. */
export const conformityLabels: Readonly<Record<CertificateRow["conformity"]["state"], string>> = {
  pass: label("conformity.pass"),
  "conditional-pass": label("conformity.conditional-pass"),
  "conditional-fail": label("conformity.conditional-fail"),
  fail: label("conformity.fail"),
  "not-decidable": label("conformity.not-decidable"),
  "no-tolerance-defined": label("conformity.no-tolerance-defined"),
  "no-statement": label("conformity.no-statement"),
};

export const rowStateLabels: Readonly<Record<CertificateRow["state"], string>> = {
  measured: label("state.measured"),
  invalid: label("state.invalid"),
  "not-reached": label("state.not-reached"),
};

export const standardRoleLabels: Readonly<Record<CertificateStandard["role"], string>> = {
  reference: label("role.reference"),
  voltmeter: label("role.voltmeter"),
  scanner: label("role.scanner"),
  junction: label("role.junction"),
};

/** Routes of ILAC-P10:07/2020 in plain words. */
export const routeLabels: Readonly<Record<string, string>> = {
  nmi: label("route.nmi"),
  accredited: label("route.accredited"),
  "in-house": label("route.in-house"),
  other: label("route.other"),
};
