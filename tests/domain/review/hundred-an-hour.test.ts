import { createHash } from "node:crypto";
import { expect, it } from "vitest";
import { decideOpened, openedState } from "@/lib/domain/review/decide-opened";
import { reviewExceptions } from "@/lib/domain/review/exceptions";
import { type ResultName, resultKey } from "@/lib/domain/review/result-name";
import { resultsToOpen } from "@/lib/domain/review/results-to-open";
import type { ReviewException } from "@/lib/domain/review/review-exception";
import { type Faults, sensors, setpoints, simulateReview } from "./simulated-review";

/**
 * The design of the review: of 320 results, three faults of which nothing is wrong in themselves stand on top, cannot be
 * signed unopened, and a tenth of the rest is looked at by lot.
 */

const sha256 = (bytes: Uint8Array) => Uint8Array.from(createHash("sha256").update(bytes).digest());
const seeds = Array.from({ length: 20 }, (_, at) => at + 1);
const exceptionsOf = (
  { reviewed }: ReturnType<typeof simulateReview>,
  beside: Partial<Parameters<typeof reviewExceptions>[0]> = {},
): readonly ReviewException[] =>
  reviewExceptions({
    points: reviewed.map(({ point }) => point),
    findings: [],
    hasTypedReadings: false,
    movedWindowsCelsius: [],
    reviewed,
    ...beside,
  });
/** What a check found of one sensor's channel and of one setpoint's window, by the seed. */
const foundBeside = (seed: number) => {
  const place = (7 * seed) % sensors.length;
  const window = seed % setpoints.length;
  return {
    sensor: sensors[place]!.tag,
    setpoint: setpoints[window]!,
    findings: [
      { code: "tip-check-low", path: `load[${place}].tipCheckRiseMicrovolt`, message: "It rose by 3 µV." },
      { code: "window-not-stable", path: `windows[${window}]`, message: "It drifts." },
    ],
    findingPlaces: {
      sensors: sensors.map(({ tag }) => ({ id: tag })),
      setpoints: setpoints.map((id) => ({ id })),
      windows: setpoints.map((setpoint) => ({ setpoint })),
      junctions: [],
      load: sensors.map(({ tag, junction }, at) => ({
        ...{ channel: `${101 + at}`, junction, item: { kind: "sensor", id: tag } },
      })),
    },
  };
};
const namesOf = ({ point, others = [] }: ReviewException): readonly ResultName[] => [point!, ...others];
const isPattern = ({ kind }: ReviewException) =>
  kind === "swap" || kind === "reference-shift" || kind === "junction-shift";

const namesSwap = (one: ReviewException, { swapped }: Faults) =>
  one.kind === "swap" && swapped.every((tag) => one.subject.includes(tag));
const namesReference = (one: ReviewException, { setpoint }: Faults) =>
  one.kind === "reference-shift" && one.text.includes(`at ${setpoint} °C`);
const namesJunction = (one: ReviewException, { junction }: Faults) =>
  one.kind === "junction-shift" && one.subject.endsWith(junction);

/** Every result that one of the three faults spoils. */
const spoiled = ({ swapped, setpoint, junction }: Faults): readonly ResultName[] =>
  sensors.flatMap((sensor) =>
    setpoints
      .filter((at) => swapped.includes(sensor.tag) || at === setpoint || sensor.junction === junction)
      .map((at) => ({ sensor: sensor.tag, setpoint: at })),
  );

it.each(seeds)(
  "puts three faults of 1 to 3 U on top of 320 results, none signed unopened (seed %i)",
  (seed) => {
    const simulated = simulateReview(seed, { hasFaults: true, isOwnNew: true });
    const { faults, reviewed } = simulated;
    const { sensor: low, setpoint: drifting, ...beside } = foundBeside(seed);
    const exceptions = exceptionsOf(simulated, beside);
    const top = exceptions.slice(0, 3);
    expect(top.some((one) => namesSwap(one, faults))).toBe(true);
    expect(top.some((one) => namesReference(one, faults))).toBe(true);
    expect(top.some((one) => namesJunction(one, faults))).toBe(true);

    const results = reviewed.map(({ point: { sensor, setpoint } }) => ({
      sensor,
      setpoint,
      label: setpoint,
    }));
    expect(results).toHaveLength(320);
    const given = { results, exceptions, seed: sha256(Uint8Array.of(seed)), sha256 };
    const { mustOpen } = openedState({ ...given, opened: [] });
    const must = new Set(mustOpen.map(resultKey));
    for (const name of spoiled(faults)) expect(must.has(resultKey(name))).toBe(true);
    // What a check found of a channel is opened at each setpoint, and of a window at each sensor.
    const found = results.filter(({ sensor, setpoint }) => sensor === low || setpoint === drifting);
    expect(found).toHaveLength(47);
    for (const name of found) expect(must.has(resultKey(name))).toBe(true);

    const { named, drawn } = resultsToOpen(given);
    expect(drawn).toHaveLength(Math.ceil((320 - named.length) / 10));
    expect(drawn.length).toBeGreaterThan(0);

    const everySensor = sensors.map(({ tag }) => tag);
    expect(decideOpened({ ...given, opened: mustOpen, sensors: everySensor })).toMatchObject({ ok: true });
    for (const left of [
      ...faults.swapped.map((sensor) => ({ sensor, setpoint: setpoints[0]! })),
      drawn[0]!,
    ]) {
      const opened = mustOpen.filter((one) => resultKey(one) !== resultKey(left));
      expect(decideOpened({ ...given, opened, sensors: everySensor })).toMatchObject({
        ok: false,
        refusal: { code: "rule", message: expect.stringContaining(`${left.sensor} at ${left.setpoint}`) },
      });
    }
  },
);

it("stays quiet where nothing is wrong: one pattern at most in twenty runs, and single results about as U says", () => {
  const all = seeds.map((seed) => exceptionsOf(simulateReview(seed, { hasFaults: false, isOwnNew: true })));
  expect(all.flatMap((exceptions) => exceptions.filter(isPattern)).length).toBeLessThanOrEqual(1);
  // Beyond U by chance: 4.6 in 100, and unevenly, since what the references bring is one draw for all 320 results of a run.
  const share =
    all.flatMap((exceptions) => exceptions.filter(({ kind }) => kind === "earlier")).length / 6400;
  expect(share).toBeGreaterThan(0.02);
  expect(share).toBeLessThan(0.07);
  for (const exceptions of all)
    expect(exceptions.every((one) => isPattern(one) || one.kind === "earlier")).toBe(true);
});

it("finds both shifts even where each sensor errs alike at all setpoints, and three swaps in four", () => {
  const runs = seeds.map((seed) => simulateReview(seed, { hasFaults: true, isOwnNew: false }));
  const found = (names: (one: ReviewException, faults: Faults) => boolean) =>
    runs.filter((run) =>
      exceptionsOf(run)
        .slice(0, 4)
        .some((one) => names(one, run.faults)),
    ).length;
  expect(found(namesReference)).toBe(20);
  expect(found(namesJunction)).toBe(20);
  // Two results of the sensors' own error, √2·U apart by chance once in a while, are all there is to go by.
  expect(found(namesSwap)).toBeGreaterThanOrEqual(15);
  const quiet = seeds.map((seed) =>
    exceptionsOf(simulateReview(seed, { hasFaults: false, isOwnNew: false })),
  );
  expect(quiet.filter((exceptions) => exceptions.some(isPattern)).length).toBeLessThanOrEqual(4);
});

it("names every result of a pattern, and none of them twice", () => {
  const { faults, ...simulated } = simulateReview(1, { hasFaults: true, isOwnNew: true });
  for (const one of exceptionsOf({ ...simulated, faults }).filter(isPattern)) {
    const keys = namesOf(one).map(resultKey);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.length).toBe(one.kind === "swap" ? 16 : one.kind === "reference-shift" ? 40 : 80);
  }
});

it("says of a certificate that is wrong throughout that every setpoint shifted, and has everything opened", () => {
  const { reviewed, faults } = simulateReview(2, { hasFaults: false, isOwnNew: true });
  const wrong = reviewed.map(({ point, ...rest }) => ({
    ...rest,
    junction: "J-1",
    point: { ...point, errorCelsius: point.errorCelsius + 3 },
  }));
  const [first] = exceptionsOf({ reviewed: wrong, faults });
  expect(first).toMatchObject({ kind: "reference-shift", subject: "References" });
  expect(first!.text).toMatch(/at every setpoint by \+[23]\.\d\d °C/);
  // All hang on one junction, which would show itself in the same way.
  expect(first!.text).toMatch(/or the reference junction$/);
  expect(namesOf(first!)).toHaveLength(320);
});

it("says nothing in common of two sensors, nor of results that have none before them", () => {
  const { reviewed, faults } = simulateReview(3, { hasFaults: true, isOwnNew: true });
  const two = reviewed.filter(({ point }) => ["T-01", "T-03"].includes(point.sensor));
  expect(exceptionsOf({ reviewed: two, faults }).filter(({ kind }) => kind.endsWith("shift"))).toEqual([]);
  expect(exceptionsOf({ reviewed: reviewed.map((one) => ({ ...one, earlier: null })), faults })).toEqual([]);
});
