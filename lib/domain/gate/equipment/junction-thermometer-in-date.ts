import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "ISO/IEC 17025:2017, 6.4.4 and 6.4.6";

/** The thermometers that were named when the junctions were checked; that they were checked at all is another rule. */
const assess = ({ junctionThermometers, bench, day }: GatePlan): readonly Found[] =>
  [...new Set(bench.junctions.map(({ thermometer }) => thermometer))].flatMap((tag) => {
    const found = (reason: string): readonly Found[] => [
      {
        code: "junction-thermometer-in-date",
        outcome: "breach",
        subject: tag,
        reason,
        remedy: "Check the junction again with a thermometer that is in date.",
        source,
      },
    ];
    const thermometer = junctionThermometers.find((one) => one.tag === tag);
    if (!thermometer) return found("this thermometer is not recorded under Standards.");
    if (thermometer.state !== "in-service") return found(`this thermometer is ${thermometer.state}.`);
    if (!thermometer.calibration) return found(`this thermometer has no calibration on ${day}.`);
    return thermometer.calibration.dueOn < day
      ? found(`the calibration of this thermometer was due on ${thermometer.calibration.dueOn}.`)
      : [];
  });

export const junctionThermometerInDate = {
  code: "junction-thermometer-in-date",
  heading: "equipment",
  fine: "The thermometer of every junction check is in service and in date.",
  source,
  assess,
} as const satisfies GateCheck;
