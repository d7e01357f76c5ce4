import type { DccCertificate } from "../calibration/dcc-certificate";
import { checkConformity } from "./check-conformity";
import { checkIdentity } from "./check-identity";
import { checkResults } from "./check-results";
import { checkSurroundings } from "./check-surroundings";
import { checkTerms } from "./check-terms";
import type { IssuedFinding } from "./issued-finding";

/**
 * What a digital certificate of ours must hold beyond what any DCC must: the items of ISO/IEC 17025:2017, 7.8, that the
 * schema leaves optional. Certificates of others are read without these rules.
 */
export const checkIssued = (certificate: DccCertificate): readonly IssuedFinding[] => [
  ...checkIdentity(certificate),
  ...checkSurroundings(certificate),
  ...checkResults(certificate),
  ...checkConformity(certificate),
  ...checkTerms(certificate),
];
