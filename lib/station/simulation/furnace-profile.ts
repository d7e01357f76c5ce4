import { exponential } from "@/lib/metrology/number/exponential";

/** How the simulated furnace is driven: up to each setpoint by a ramp, then held. Times in seconds, temperatures in °C. */
export type FurnaceProgram = {
  readonly setpointsCelsius: readonly number[];
  readonly startCelsius: number;
  readonly rampCelsiusPerMinute: number;
  readonly dwellSeconds: number;
};

/** How this furnace answers: overshoot after the ramp, its decay, and a slow creep while it soaks. */
export type FurnaceResponse = {
  readonly overshootCelsius: number;
  readonly settlingSeconds: number;
  readonly offsetCelsius: number;
  readonly creepCelsiusPerHour: number;
};

type Leg = {
  readonly from: number;
  readonly to: number;
  readonly begins: number;
  readonly rampEnds: number;
  readonly ends: number;
};

/** Which setpoint this moment belongs to: its ramp or its dwell. */
export const setpointIndexAt = (program: FurnaceProgram): ((seconds: number) => number) => {
  const legs = legsOf(program);
  return (seconds) => {
    const index = legs.findIndex((leg) => seconds < leg.ends);
    return index < 0 ? legs.length - 1 : index;
  };
};

const legsOf = (program: FurnaceProgram): readonly Leg[] => {
  const legs: Leg[] = [];
  let from = program.startCelsius;
  let begins = 0;
  for (const to of program.setpointsCelsius) {
    const rampEnds = begins + ((to - from) / program.rampCelsiusPerMinute) * 60;
    const ends = rampEnds + program.dwellSeconds;
    legs.push({ from, to, begins, rampEnds, ends });
    from = to;
    begins = ends;
  }
  return legs;
};

export const durationOf = (program: FurnaceProgram): number => legsOf(program).at(-1)?.ends ?? 0;

/**
 * Temperature of the working zone as a function of time. After the ramp the excess is A·x·e^(1−x), x = time since the
 * ramp's end over the settling time: zero at the end of the ramp, A at x = 1, gone after ten settling times.
 */
export const furnaceProfile = (
  program: FurnaceProgram,
  response: FurnaceResponse,
): ((seconds: number) => number) => {
  const legs = legsOf(program);
  return (seconds) => {
    const leg = legs.find((candidate) => seconds < candidate.ends) ?? legs.at(-1);
    if (!leg) return program.startCelsius;
    if (seconds < leg.rampEnds) {
      const share = (seconds - leg.begins) / (leg.rampEnds - leg.begins);
      return leg.from + share * (leg.to + response.offsetCelsius - leg.from);
    }
    const held = seconds - leg.rampEnds;
    const x = held / response.settlingSeconds;
    const excess = response.overshootCelsius * x * exponential(1 - x);
    return leg.to + response.offsetCelsius + excess + (response.creepCelsiusPerHour * held) / 3600;
  };
};
