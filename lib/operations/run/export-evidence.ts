import { loadEvidence } from "@/lib/data/run/load-evidence";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { runEvents } from "@/lib/domain/run/events";
import { ExportEvidenceInput } from "@/lib/domain/run/schema";
import { defineOperation } from "../operation";

/** A run's evidence as one file, readings and all: what `evaluate` reads. It shows every customer's readings, so it is logged. */
export const exportEvidence = defineOperation({
  name: "run/export-evidence",
  permission: "evidence.export",
  input: ExportEvidenceInput,
  perform: async ({ tx }, input) => {
    const loaded = await loadEvidence(tx, input.run);
    if (!loaded) throw new Refused({ code: "not-found", message: `There is no run ${input.run}.` });
    const { evidence, run } = loaded;
    if (evidence.scans.channels.length === 0)
      throw new Refused({
        code: "wrong-state",
        message: `Run ${run.number} has no readings yet: there is nothing to export.`,
      });
    // JSON writes every float64 so that it is read back to the same bits (but −0, which no result can tell from 0).
    const text = `${JSON.stringify(evidence, null, 1)}\n`;
    const digest = sha256(new TextEncoder().encode(text));
    const readings = evidence.scans.channels.reduce((sum, { seconds }) => sum + seconds.length, 0);
    return {
      value: { fileName: `${run.number}-evidence.json`, text },
      events: [
        eventOf(runEvents.evidenceExported, run.id, {
          run: run.number,
          readings,
          sha256: Buffer.from(digest).toString("hex"),
        }),
      ],
    };
  },
});
