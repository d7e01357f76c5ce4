import type { ProviderReport } from "@/lib/data/provider/report-store";
import { plainSensorStates } from "@/lib/domain/order/progress";
import { measuredBy, reportLines } from "@/lib/domain/provider/measured-by";
import { isSensorState } from "@/lib/domain/sensor/transitions";

/** A provider's certificate is shown as theirs, never among ours. */
export const externalOf = (report: ProviderReport | undefined) =>
  report
    ? {
        said: measuredBy(report.providerName),
        certificate: report.certificate,
        issuedOn: report.issuedOn,
        accreditation: report.accreditation,
        correction: report.correction,
        lines: reportLines(report.results),
        href: `/api/provider-reports/${report.id}`,
      }
    : null;

/** In plain words; what goes to a provider waits for no furnace of ours. */
export const whereOf = (state: string, isSubcontracted: boolean, hasCertificate = true): string => {
  if (!isSensorState(state)) return "";
  if (isSubcontracted && state === "received") return "Measured by another laboratory for us";
  if (isSubcontracted && state === "issued") return "Finished";
  if (state === "collected" && !hasCertificate) return "Handed back without a certificate";
  return plainSensorStates[state];
};
