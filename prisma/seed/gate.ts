import { passGate } from "@/lib/operations/gate/pass";
import { recordBenchChecks } from "@/lib/operations/gate/record-bench-checks";
import type { Cast } from "./people";
import { tellRoom } from "./room";
import type { Teller } from "./teller";

type Load = readonly { readonly channel: string }[];

/** The bench on the morning of the run, and the gate passed. */
export const tellGate = async (
  teller: Teller,
  cast: Cast,
  run: string,
  load: Load,
  days: number,
): Promise<void> => {
  const { tell, at } = teller;
  const { technician } = cast;
  await tell(recordBenchChecks, technician, at(days, "06:24"), {
    run,
    warmUpHours: 14,
    shortedZeroMicrovolt: 0.1,
    voltagePoint: { appliedMicrovolt: 10_000, readMicrovolt: 9_999.6 },
    channels: load.map(({ channel }, index) => ({ channel, microvolt: ((index % 5) - 2) / 5 })),
    junctions: [{ junction: "ICE-01", thermometer: "PRT-01", thermometerCelsius: 0.006 }],
  });
  await tellRoom(teller, cast, run, "start", days);
  await tell(passGate, technician, at(days, "06:28"), { run });
};
