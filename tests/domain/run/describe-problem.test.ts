import { expect, it } from "vitest";
import s5 from "@/lib/domain/evidence/examples/ea4-02-s5.json";
import { parseEvidence } from "@/lib/domain/evidence/parse-evidence";
import { describeEvidenceProblem } from "@/lib/domain/run/describe-problem";

const parsed = parseEvidence(s5);
if (!parsed.ok) throw new Error("S5 is evidence");
const evidence = parsed.value;
const said = (path: string) => describeEvidenceProblem(evidence, { path, message: "it is wrong." });

it("says what a problem is about in the words of the bench", () => {
  expect(said("sensors[0].inhomogeneity")).toBe("Sensor X: it is wrong.");
  expect(said("references[1].correction")).toBe("Reference S2: it is wrong.");
  expect(said("scans.channels[2].seconds[3]")).toBe("Channel S2: it is wrong.");
  expect(said("windows[0].toSeconds")).toBe("The setpoint 1000 °C: it is wrong.");
  expect(said("load[1].channel")).toBe("Place 2, channel X: it is wrong.");
  expect(said("voltmeter.drift")).toBe("The voltmeter: it is wrong.");
  expect(said("format")).toBe("it is wrong.");
});
