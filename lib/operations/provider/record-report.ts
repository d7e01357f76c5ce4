import { hex } from "@/lib/data/hex";
import { loadReportFacts } from "@/lib/data/provider/load-report-facts";
import { insertReport } from "@/lib/data/provider/report-store";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { documentType } from "@/lib/domain/calibration/document-type";
import { isoDay } from "@/lib/domain/calibration/due";
import { decideRecordReport } from "@/lib/domain/provider/decide-report";
import { providerEvents } from "@/lib/domain/provider/events";
import { RecordReportInput } from "@/lib/domain/provider/report-schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** What an external provider measured of a sensor, from its own certificate; it counts once a second person agrees. */
export const recordReport = defineOperation({
  name: "provider/record-report",
  permission: "provider-report.record",
  input: RecordReportInput,
  perform: async ({ actor, now, tx }, input) => {
    const facts = await loadReportFacts(tx, input.sensor, input.issuedOn);
    if (!facts) throw new Refused({ code: "not-found", message: `There is no sensor ${input.sensor}.` });
    const { sensor, provider } = facts;
    const results = demand(
      decideRecordReport(
        {
          ...facts,
          sensor: sensor.tag,
          provider: provider?.name ?? null,
          isPdf: documentType(input.document.bytes) === "application/pdf",
          today: isoDay(now),
        },
        input,
      ),
    );
    if (!provider) throw new Error("decided for a line without a provider");
    const { certificate, issuedOn, accreditation, correction, document } = input;
    const sequence = facts.earlier.length + 1;
    const id = await insertReport(tx, {
      ...{ sensor, provider, sequence, certificate, issuedOn, accreditation, results, correction, document },
      recordedById: personIdOf(actor),
      recordedAt: now,
    });
    const payload = {
      ...{ sensor: sensor.tag, provider: provider.name, certificate, issuedOn, correction },
      sha256: hex(sha256(document.bytes)),
    };
    return {
      value: { id, tag: sensor.tag },
      events: [eventOf(providerEvents.reportRecorded, sensor.id, payload)],
    };
  },
});
